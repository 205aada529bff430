// The header is found the way it will be found; then its columns are looked up.
#include "importers/table_fit.h"

#include <algorithm>
#include <utility>

#include "importers/csv_reader.h"
#include "importers/json_feed.h"
#include "importers/table_rows.h"
#include "importers/xlsx_reader.h"
#include "importers/xml_feed.h"

namespace rangebook {
namespace {

class TextFront final : public ByteSource {
 public:
  explicit TextFront(std::string_view text) : text_(text) {}
  std::string_view next_chunk() override { return std::exchange(text_, {}); }

 private:
  std::string_view text_;
};

bool lists(const std::vector<std::string>& missing, const ColumnChoice& choice) {
  return std::find(missing.begin(), missing.end(), choice.column) != missing.end();
}

bool fits(std::unique_ptr<RecordSource> source, const TableOptions& options,
          const std::vector<ColumnChoice>& columns) {
  TableRows rows(std::move(source), options);
  if (!rows.open()) return false;
  const auto& missing = rows.map().missing;
  const bool all = std::none_of(columns.begin(), columns.end(),
                                [&](const ColumnChoice& choice) { return lists(missing, choice); });
  return all && (rows.names().empty() || rows.map().has(Field::name));
}

/// A profile that speaks of no names says nothing of a feed.
bool feed_fits(RowReader& rows, const std::vector<ColumnChoice>& columns) {
  while (rows.next() != RowReader::Step::end) continue;
  const auto missing = rows.preview().missing;
  return !columns.empty() &&
         std::none_of(columns.begin(), columns.end(),
                      [&](const ColumnChoice& choice) { return lists(missing, choice); });
}

}  // namespace

bool table_fits(std::string_view front, const TableOptions& options,
                const std::vector<ColumnChoice>& columns) {
  TextFront source(front);
  return fits(open_csv_records(source, options), options, columns);
}

bool workbook_fits(const std::string& bytes, const TableOptions& options,
                   const std::vector<ColumnChoice>& columns) {
  return fits(open_xlsx_records(bytes, options), options, columns);
}

bool json_fits(std::string_view front, const TableOptions& options,
               const std::vector<ColumnChoice>& columns) {
  TextFront source(front);
  return feed_fits(*open_json(source, 0, options), columns);
}

bool xml_fits(std::string_view front, const TableOptions& options,
              const std::vector<ColumnChoice>& columns) {
  TextFront source(front);
  return feed_fits(*open_xml(source, 0, options), columns);
}

std::string_view FrontSource::front() {
  looked_ = true;
  while (front_.size() < kFrontBytes) {
    const std::string_view chunk = source_.next_chunk();
    if (chunk.empty()) break;
    front_.append(chunk);
  }
  return front_;
}

std::string_view FrontSource::next_chunk() {
  if (looked_ && !std::exchange(given_, true) && !front_.empty()) return front_;
  return source_.next_chunk();
}

}  // namespace rangebook
