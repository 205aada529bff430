// Known names first; the shape of the columns where no name is known.
#include "importers/table_header.h"

#include <algorithm>
#include <map>

#include "importers/byte_search.h"
#include "importers/field_map.h"
#include "importers/header_words.h"

namespace rangebook {
namespace {

/// Longer cells are text of the body, not names of columns.
constexpr std::size_t kLongestName = 60;

/// Names of columns stand in at most so many rows.
constexpr std::size_t kMaxHeaderRows = 3;

enum class Look : std::uint8_t { empty, text, value };

bool is_address(std::string_view text) {
  return text.starts_with("http://") || text.starts_with("https://") || text.starts_with("www.");
}

/// Numbers, prices, dates, codes, addresses: what a body holds and a header does not.
Look look_of(std::string_view cell) {
  const std::string_view text = without_blanks(cell);
  if (text.empty()) return Look::empty;
  std::size_t digits = 0;
  std::size_t letters = 0;
  for (const char sign : text) {
    digits += is_ascii_digit(sign) ? 1U : 0U;
    letters += is_ascii_letter(sign) ? 1U : 0U;
  }
  const bool value =
      is_address(text) || (digits > 0 && digits >= letters) || text.size() > kLongestName;
  return value ? Look::value : Look::text;
}

std::vector<std::string_view> views(const KeptRecord& record) {
  return {record.cells.begin(), record.cells.end()};
}

/// Cells up to the last one that is not empty.
std::size_t used_width(const KeptRecord& record) {
  std::size_t width = record.cells.size();
  while (width > 0 && without_blanks(record.cells[width - 1]).empty()) --width;
  return width;
}

/// How many different texts the cells hold.
std::size_t different_cells(const KeptRecord& record) {
  std::vector<std::string_view> seen;
  for (const auto& cell : record.cells) {
    const std::string_view text = without_blanks(cell);
    if (!text.empty() && std::find(seen.begin(), seen.end(), text) == seen.end()) {
      seen.push_back(text);
    }
  }
  return seen.size();
}

/// The width most records have; of equally frequent ones the widest.
std::size_t usual_width(std::span<const KeptRecord> records) {
  std::map<std::size_t, std::size_t> counts;
  for (const auto& record : records) {
    if (record.fault == RecordFault::none) ++counts[record.cells.size()];
  }
  std::size_t width = 0;
  std::size_t most = 0;
  for (const auto& [cells, count] : counts) {
    if (count < most) continue;
    most = count;
    width = cells;
  }
  return width;
}

/// Whether most cells of a column below `from` are values.
bool is_value_column(std::span<const KeptRecord> records, std::size_t from, std::size_t column) {
  std::size_t values = 0;
  std::size_t texts = 0;
  for (std::size_t i = from; i < records.size(); ++i) {
    if (column >= records[i].cells.size()) continue;
    const Look look = look_of(records[i].cells[column]);
    values += look == Look::value ? 1U : 0U;
    texts += look == Look::text ? 1U : 0U;
  }
  return values > 2 * texts;
}

/// Whether the record holds text above columns of values, and no value itself.
bool stands_above_values(std::span<const KeptRecord> records, std::size_t at) {
  bool above = false;
  for (std::size_t column = 0; column < records[at].cells.size(); ++column) {
    const Look look = look_of(records[at].cells[column]);
    if (look == Look::value) return false;
    above = above || (look == Look::text && is_value_column(records, at + 1, column));
  }
  return above;
}

bool all_different_texts(const KeptRecord& record) {
  std::vector<std::string_view> seen;
  for (const auto& cell : record.cells) {
    if (look_of(cell) != Look::text) return false;
    if (std::find(seen.begin(), seen.end(), cell) != seen.end()) return false;
    seen.emplace_back(cell);
  }
  return !seen.empty();
}

/// Whether a map is sure to come from a header: most of the filled cells name fields.
bool names_most_cells(const FieldMap& map, const KeptRecord& record, std::size_t width) {
  return map.known() >= 2 && map.known() * 2 >= different_cells(record) &&
         used_width(record) * 2 >= width;
}

/// The first record whose cells mostly name fields, else the one that names most.
std::optional<std::size_t> header_by_names(std::span<const KeptRecord> records, std::size_t width,
                                           std::span<const ColumnChoice> choices) {
  std::optional<std::size_t> found;
  std::size_t most = 0;
  for (std::size_t i = 0; i < records.size(); ++i) {
    if (records[i].fault != RecordFault::none) continue;
    const FieldMap map = map_header(views(records[i]), 0, choices);
    if (!map.has(Field::name) || map.known() <= most) continue;
    if (names_most_cells(map, records[i], width)) return i;
    // A title such as "Products" above the table is a known word too, but alone in its row.
    if (map.known() == 1 && i + 1 < records.size() &&
        used_width(records[i]) < used_width(records[i + 1])) {
      continue;
    }
    most = map.known();
    found = i;
  }
  return found;
}

std::optional<std::size_t> header_by_shape(std::span<const KeptRecord> records, std::size_t width) {
  for (std::size_t i = 0; i < records.size(); ++i) {
    if (records[i].fault != RecordFault::none || records[i].cells.size() != width) continue;
    if (different_cells(records[i]) * 2 < width) continue;  // a title, padded
    if (stands_above_values(records, i)) return i;
    const bool no_values_below = [&] {
      for (std::size_t column = 0; column < width; ++column) {
        if (is_value_column(records, i + 1, column)) return false;
      }
      return true;
    }();
    if (no_values_below && all_different_texts(records[i])) return i;
    return std::nullopt;
  }
  return std::nullopt;
}

bool recurs_below(std::span<const KeptRecord> records, std::size_t at, std::size_t column) {
  const auto& cell = records[at].cells[column];
  return std::any_of(records.begin() + static_cast<std::ptrdiff_t>(at) + 1, records.end(),
                     [&](const KeptRecord& below) {
                       return column < below.cells.size() && below.cells[column] == cell;
                     });
}

/// Whether a record goes on with the names of the header above it: text above two columns of values
/// (or the only one), no value, and nothing that a row below has as well.
bool goes_on(std::span<const KeptRecord> records, std::size_t at) {
  if (at + 1 >= records.size() || records[at].fault != RecordFault::none) return false;
  const auto& cells = records[at].cells;
  if (cells.size() != records[at - 1].cells.size()) return false;
  std::size_t value_columns = 0;
  std::size_t texts_above = 0;
  for (std::size_t column = 0; column < cells.size(); ++column) {
    const Look look = look_of(cells[column]);
    if (look == Look::value) return false;
    if (look == Look::text && recurs_below(records, at, column)) return false;
    if (!is_value_column(records, at + 1, column)) continue;
    ++value_columns;
    texts_above += look == Look::text ? 1U : 0U;
  }
  return texts_above > 0 && texts_above >= std::min<std::size_t>(2, value_columns);
}

/// One name of two: both together where that is a known name (`Price` over `EUR`), else the one
/// that is known (`Was` below the merged `Prices`).
std::string joined_name(const std::string& above, std::string_view below) {
  if (below.empty() || below == above) return above;
  if (above.empty()) return std::string(below);
  std::string both = above + ' ' + std::string(below);
  if (column_meaning(both)) return both;
  if (column_meaning(below)) return std::string(below);
  return column_meaning(above) ? above : both;
}

/// A further row of names is joined where that does not hide a name that is known without it; false
/// when the next row is none.
bool take_further_row(std::span<const KeptRecord> records, HeaderPlace& place) {
  if (place.body >= records.size() || !goes_on(records, place.body)) return false;
  std::vector<std::string> joined = place.names;
  for (std::size_t i = 0; i < joined.size(); ++i) {
    joined[i] = joined_name(joined[i], without_blanks(records[place.body].cells[i]));
  }
  const std::vector<std::string_view> before(place.names.begin(), place.names.end());
  const std::vector<std::string_view> after(joined.begin(), joined.end());
  if (map_header(after).known() >= map_header(before).known()) place.names = std::move(joined);
  ++place.body;
  return true;
}

HeaderPlace header_at(std::span<const KeptRecord> records, std::size_t at) {
  HeaderPlace place;
  place.preamble = at;
  place.body = at + 1;
  place.columns = records[at].cells.size();
  for (const auto& cell : records[at].cells) place.names.emplace_back(without_blanks(cell));
  for (std::size_t rows = 1; rows < kMaxHeaderRows && take_further_row(records, place); ++rows)
    continue;
  return place;
}

}  // namespace

KeptRecord::KeptRecord(const Record& record)
    : cells(record.cells.begin(), record.cells.end()),
      text(record.text),
      line(record.line),
      byte(record.byte),
      fault(record.fault),
      ended(record.ended),
      after_gap(record.after_gap) {}

void KeptRecord::view(Record& record) const {
  record.cells.assign(cells.begin(), cells.end());
  record.text = text;
  record.line = line;
  record.byte = byte;
  record.fault = fault;
  record.ended = ended;
  record.after_gap = after_gap;
}

HeaderPlace find_header(std::span<const KeptRecord> records,
                        std::span<const ColumnChoice> choices) {
  const std::size_t width = usual_width(records);
  std::vector<ColumnChoice> named(choices.begin(), choices.end());
  std::erase_if(named, [](const ColumnChoice& one) { return one.column.starts_with('#'); });
  if (const auto at = header_by_names(records, width, named)) return header_at(records, *at);
  if (const auto at = header_by_shape(records, width)) return header_at(records, *at);
  return without_header(records);
}

HeaderPlace without_header(std::span<const KeptRecord> records) {
  HeaderPlace place;
  place.columns = usual_width(records);
  while (place.body < records.size() && records[place.body].cells.size() != place.columns) {
    ++place.body;
  }
  place.preamble = place.body;
  return place;
}

HeaderPlace header_on_line(std::span<const KeptRecord> records, std::uint64_t line) {
  for (std::size_t i = 0; i < records.size(); ++i) {
    if (records[i].line >= line) return header_at(records, i);
  }
  return {};
}

}  // namespace rangebook
