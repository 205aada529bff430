// One short look at each record that keeps to the shape of its table; a long look at the others.
#include "importers/table_rows.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <unordered_set>

#include "importers/byte_search.h"
#include "schema/embedded.h"

namespace rangebook {
namespace {

constexpr std::size_t kHeaderSearchBytes = std::size_t{1} << 20U;
constexpr std::size_t kShownNotes = 5;
/// Longer cells begin no line of totals; shorter ones are looked up.
constexpr std::size_t kLongestTotalWord = 16;

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), ascii_lower);
  return out;
}

std::size_t filled_cells(const Record& record) {
  return static_cast<std::size_t>(
      std::count_if(record.cells.begin(), record.cells.end(),
                    [](std::string_view cell) { return !without_blanks(cell).empty(); }));
}

std::string_view first_filled(const Record& record) {
  for (const std::string_view cell : record.cells) {
    if (!without_blanks(cell).empty()) return without_blanks(cell);
  }
  return {};
}

/// A sentence, a remark behind a sign, a name with a colon: not the name of a line.
bool reads_like_a_note(std::string_view text) {
  const bool sign_first = !is_ascii_letter(text.front()) && !is_ascii_digit(text.front()) &&
                          static_cast<unsigned char>(text.front()) < 0x80;
  return sign_first || text.back() == '.' || text.back() == ':' || text.find(": ") != text.npos;
}

}  // namespace

bool is_total_word(std::string_view cell) {
  static const auto kWords = [] {
    std::unordered_set<std::string> words;
    for (const auto& row : table_rows("tables/table_words.tsv")) words.emplace(row.at(1));
    return words;
  }();
  while (!cell.empty() && (cell.back() == ':' || cell.back() == ' ')) cell.remove_suffix(1);
  return cell.size() <= kLongestTotalWord && kWords.contains(lower(cell));
}

TableRows::TableRows(std::unique_ptr<RecordSource> source, const TableOptions& options)
    : source_(std::move(source)), options_(options) {}

void TableRows::read_ahead() {
  const std::uint64_t wanted = options_.header_row.value_or(0);
  std::size_t bytes = 0;
  Record record;
  while (bytes < kHeaderSearchBytes && source_->next(record)) {
    ahead_.emplace_back(record);
    bytes += record.text.size();
    if (ahead_.size() >= kHeaderSearchRecords && record.line >= wanted) break;
  }
}

bool TableRows::open() {
  read_ahead();
  if (ahead_.empty()) return false;
  const std::vector<KeptRecord> records(ahead_.begin(), ahead_.end());
  HeaderPlace place = options_.no_header    ? without_header(records)
                      : options_.header_row ? header_on_line(records, *options_.header_row)
                                            : find_header(records, options_.columns);
  columns_ = place.columns;
  preamble_ = place.preamble;
  header_rows_ = place.body - place.preamble;
  if (!place.names.empty()) header_line_ = records[place.preamble].line;
  use_header(std::move(place.names));
  ahead_.erase(ahead_.begin(), ahead_.begin() + static_cast<std::ptrdiff_t>(place.body));
  return true;
}

void TableRows::use_header(std::vector<std::string> names) {
  names_ = std::move(names);
  const std::vector<std::string_view> views(names_.begin(), names_.end());
  map_ = map_header(views, columns_, options_.columns);
  if (!names_.empty()) columns_ = names_.size();
  key_column_ = map_.column[static_cast<std::size_t>(Field::name)].value_or(0);
  key_bytes_ = key_column_ < names_.size() ? names_[key_column_].size() : 0;
}

void TableRows::set_map(FieldMap map) {
  map_ = std::move(map);
  key_column_ = map_.column[static_cast<std::size_t>(Field::name)].value_or(0);
}

bool TableRows::take(Record& record) {
  repaired_ = false;
  if (ahead_.empty()) return source_->next(record);
  replayed_.emplace(std::move(ahead_.front()));
  ahead_.pop_front();
  replayed_->view(record);
  return true;
}

bool TableRows::next(Record& record) {
  while (take(record)) {
    if (is_usual(record) || !is_left_out(record)) return true;
  }
  return false;
}

bool TableRows::is_usual(const Record& record) const {
  if (record.cells.size() != columns_ || record.after_gap || columns_ == 0) return false;
  const std::size_t bytes = record.cells[key_column_].size();
  return bytes > kLongestTotalWord && bytes != key_bytes_;
}

bool TableRows::is_left_out(Record& record) {
  if (record.fault == RecordFault::none) {
    if (filled_cells(record) == 0) return true;
    if (is_header_again(record)) {
      ++repeated_;
      return true;
    }
    if (starts_another_table(record)) return true;
    if (is_note(record)) {
      ++notes_;
      if (note_lines_.size() < kShownNotes) note_lines_.push_back(record.line);
      return true;
    }
  }
  mend(record);
  return false;
}

bool TableRows::is_header_again(const Record& record) const {
  if (names_.empty() || record.cells.size() < names_.size()) return false;
  for (std::size_t i = 0; i < record.cells.size(); ++i) {
    const std::string_view name = i < names_.size() ? std::string_view(names_[i]) : "";
    if (without_blanks(record.cells[i]) != name) return false;
  }
  return true;
}

/// A second table below the first, with columns of its own.
bool TableRows::starts_another_table(const Record& record) {
  if (!record.after_gap && record.cells.size() == columns_) return false;
  const FieldMap map = map_header(record.cells, columns_, options_.columns);
  if (!map.has(Field::name) || map.known() < 2 || map.known() * 2 < filled_cells(record)) {
    return false;
  }
  std::vector<std::string> names;
  for (const auto cell : record.cells) names.emplace_back(without_blanks(cell));
  use_header(std::move(names));
  ++further_tables_;
  return true;
}

bool TableRows::is_note(const Record& record) const {
  const std::string_view text = first_filled(record);
  const std::size_t filled = filled_cells(record);
  if (columns_ < 2 || filled * 2 > columns_ + 1) return false;
  if (is_total_word(text)) return true;
  if (columns_ < 3 || filled != 1 || (record.cells.size() == columns_ && !record.after_gap)) {
    return columns_ >= 3 && filled == 1 && text.front() == '#';
  }
  return record.after_gap || reads_like_a_note(text) ||
         (key_column_ != 0 && text.find(' ') != text.npos);
}

void TableRows::mend(Record& record) {
  if (record.fault == RecordFault::none) {
    if (record.cells.size() == columns_) return;
    const bool extra =
        record.cells.size() > columns_ &&
        std::any_of(record.cells.begin() + static_cast<std::ptrdiff_t>(columns_),
                    record.cells.end(), [](std::string_view cell) { return !cell.empty(); });
    if (!extra && record.cells.size() != 1) return;
  }
  repaired_ = source_->repair(record, columns_);
}

std::vector<Detection> TableRows::detections() const {
  std::vector<Detection> found;
  const bool stated = options_.header_row || options_.no_header;
  found.push_back({"column names",
                   names_.empty() ? "none"
                   : header_rows_ > 1
                       ? fmt::format("line {} and {} more", header_line_, header_rows_ - 1)
                       : fmt::format("line {}", header_line_),
                   stated});
  const auto add = [&](std::string_view what, std::string value) {
    found.push_back({std::string(what), std::move(value), false});
  };
  if (preamble_ > 0) add("lines above the table", fmt::format("{}, left out", preamble_));
  if (notes_ > 0) {
    add("notes and totals",
        fmt::format("{}, left out (line {}{})", notes_, fmt::join(note_lines_, ", "),
                    notes_ > note_lines_.size() ? ", .." : ""));
  }
  if (repeated_ > 0) add("column names again", fmt::format("{} times, left out", repeated_));
  if (further_tables_ > 0) add("further tables below", fmt::format("{}, read", further_tables_));
  return found;
}

std::string TableRows::description() const {
  std::string text;
  if (names_.empty()) text = "header=none";
  if (header_line_ > 1) text = fmt::format("header=line {}", header_line_);
  const auto add = [&](std::uint64_t count, std::string_view what) {
    if (count == 0) return;
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", count, what);
  };
  add(notes_, fmt::format("notes left out (line {}{})", fmt::join(note_lines_, ", "),
                          notes_ > note_lines_.size() ? ", .." : ""));
  add(repeated_, "headers repeated");
  add(further_tables_, "further tables");
  return text;
}

}  // namespace rangebook
