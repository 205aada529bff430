// Records of the CSV reader, each set as a field.
#include "importers/terms_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

#include "importers/byte_search.h"
#include "importers/csv_reader.h"
#include "schema/terms_fields.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

constexpr std::size_t kFrontBytes = 4096;

class MemorySource final : public ByteSource {
 public:
  explicit MemorySource(std::string_view bytes) : bytes_(bytes) {}
  std::string_view next_chunk() override { return std::exchange(bytes_, {}); }

 private:
  std::string_view bytes_;
};

std::string lower_case(std::string_view text) {
  std::string lower(text);
  std::transform(lower.begin(), lower.end(), lower.begin(), ascii_lower);
  return lower;
}

struct Columns {
  std::size_t field = 0;
  std::size_t value = 0;
};

std::optional<Columns> columns_of(const Record& header) {
  const auto find = [&](std::string_view name) {
    const auto at = std::find_if(header.cells.begin(), header.cells.end(),
                                 [&](auto cell) { return lower_case(trimmed(cell)) == name; });
    return static_cast<std::size_t>(at - header.cells.begin());
  };
  const Columns columns{find("field"), find("value")};
  if (std::max(columns.field, columns.value) >= header.cells.size()) return std::nullopt;
  return columns;
}

void read_record(ReadTermsText& result, const Record& record, Columns columns,
                 std::optional<Currency> home) {
  const auto fault = [&](std::string what, std::string how) {
    result.faults.push_back(
        {static_cast<std::size_t>(record.line), std::move(what), std::move(how)});
  };
  if (std::max(columns.field, columns.value) >= record.cells.size()) {
    return fault("This row has too few cells, or a quote that does not close.",
                 "Write a field and its value in each row.");
  }
  const std::string field(trimmed(record.cells[columns.field]));
  const std::string value(trimmed(record.cells[columns.value]));
  if (field.empty() || value.empty() || field == "shop" || field == "observed") return;
  const auto before = field_text(result.terms, field);
  Terms once;
  if (auto bad = set_field(once, field, value, home)) {
    return fault(std::move(bad->what), std::move(bad->how_to_fix));
  }
  const auto text = field_text(once, field).value_or(value);
  if (before && *before != text) {
    return fault(fmt::format("{} stands here for the second time, with another value.", field),
                 "Keep the row that holds.");
  }
  set_field(result.terms, field, text);
}

}  // namespace

bool is_terms_table(std::string_view document) {
  MemorySource source(document.substr(0, kFrontBytes));
  const auto records = open_csv_records(source, {});
  Record first;
  return records->next(first) && columns_of(first).has_value();
}

ReadTermsText read_terms_table(std::string_view document, std::optional<Currency> home) {
  ReadTermsText result;
  MemorySource source(document);
  const auto records = open_csv_records(source, {});
  Record record;
  std::optional<Columns> columns;
  while (records->next(record)) {
    if (!columns) {
      columns = columns_of(record);
      if (!columns) break;
      continue;
    }
    read_record(result, record, *columns, home);
  }
  if (!columns) {
    result.faults.push_back(
        {1, "The table has no columns \"field\" and \"value\".", "Name them in the first row."});
  }
  if (const auto fault = records->fault()) {
    result.faults.push_back({0, fault->what, fault->how_to_fix});
  }
  return result;
}

}  // namespace rangebook
