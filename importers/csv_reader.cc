// Records to raw rows; whatever cannot be a row becomes a rejection with line, reason and remedy.
#include "importers/csv_reader.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <array>
#include <optional>

#include "importers/csv_records.h"
#include "importers/field_map.h"
#include "importers/utf8.h"

namespace rangebook {
namespace {

constexpr std::string_view kDelimiters = ",;\t|";

/// Spaces and tabs around a cell mean nothing in a table typed by hand.
std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

std::string_view unquoted(std::string_view text) {
  text = trimmed(text);
  const bool quoted = text.size() >= 2 && text.front() == '"' && text.back() == '"';
  return quoted ? text.substr(1, text.size() - 2) : text;
}

std::size_t known_names(std::string_view line, char delimiter) {
  std::size_t known = 0;
  for (std::size_t from = 0; from <= line.size();) {
    const std::size_t to = std::min(line.find(delimiter, from), line.size());
    if (field_named(unquoted(line.substr(from, to - from)))) ++known;
    from = to + 1;
  }
  return known;
}

char best_delimiter(std::string_view header) {
  char best = ',';
  std::size_t most = 0;
  for (const char delimiter : kDelimiters) {
    const std::size_t known = known_names(header, delimiter);
    if (known > most) {
      most = known;
      best = delimiter;
    }
  }
  return best;
}

std::string_view delimiter_name(char delimiter) {
  constexpr std::array<std::string_view, 4> kNames{"comma", "semicolon", "tab", "bar"};
  return kNames.at(kDelimiters.find(delimiter));
}

class CsvReader final : public RowReader {
 public:
  CsvReader(ByteSource& source, std::uint32_t document) : records_(source), document_(document) {}

  Step next() override;
  const RawRow& row() const override { return row_; }
  const Rejection& rejection() const override { return rejection_; }
  std::string mapping() const override;

 private:
  enum class State : std::uint8_t { header, rows, end };

  Step read_header();
  Step read_row();
  bool has_good_shape();
  void reject(RejectionKind kind, std::string what, std::string how_to_fix);
  Step refuse_document(RejectionKind kind, std::string what, std::string how_to_fix);
  bool reject_fault();
  bool reject_bad_bytes();
  void name_rejected_line();
  std::string_view cell(Field field) const;

  CsvRecords records_;
  std::uint32_t document_;
  State state_ = State::header;
  char delimiter_ = ',';
  FieldMap map_;
  CsvRecord record_;
  RawRow row_;
  Rejection rejection_;
};

RowReader::Step CsvReader::next() {
  if (state_ == State::header) {
    if (const Step step = read_header(); step != Step::row) return step;
  }
  return state_ == State::end ? Step::end : read_row();
}

/// `row` when the header was understood and rows can be read.
RowReader::Step CsvReader::read_header() {
  const std::string_view line = records_.peek_line();
  if (line.size() >= 2 && (line.starts_with("\xFF\xFE") || line.starts_with("\xFE\xFF"))) {
    return refuse_document(RejectionKind::bad_encoding, "The file is in UTF-16, not in UTF-8.",
                           "Save it again as \"CSV UTF-8\".");
  }
  delimiter_ = best_delimiter(line);
  records_.set_delimiter(delimiter_);
  if (!records_.next(record_)) {
    return refuse_document(RejectionKind::unreadable_document, "The file is empty.",
                           "Export or save it again.");
  }
  if (const auto bad = first_bad_byte(record_.text)) {
    return refuse_document(RejectionKind::unreadable_document,
                           fmt::format("This is no text file: the first line has a byte 0x{:02X} "
                                       "that is not UTF-8 text.",
                                       static_cast<unsigned char>(record_.text[*bad])),
                           "Give a CSV file in UTF-8, or a saved page that ends in .html.");
  }
  if (record_.fault != RecordFault::none) {
    reject_fault();
    state_ = State::end;
    return Step::rejection;
  }
  map_ = map_header(record_.cells);
  if (!map_.has(Field::name)) {
    return refuse_document(
        RejectionKind::no_name_column,
        fmt::format("The first line has no column called \"name\"; it reads: {}.",
                    excerpt_of(fmt::format("{}", fmt::join(record_.cells, ", ")), kExcerptBytes)),
        "Put the column names into the first line; \"name\" is the one that is always needed.");
  }
  state_ = State::rows;
  return Step::row;
}

RowReader::Step CsvReader::read_row() {
  if (!records_.next(record_)) {
    state_ = State::end;
    return Step::end;
  }
  if (reject_fault() || reject_bad_bytes() || !has_good_shape()) {
    name_rejected_line();
    return Step::rejection;
  }
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    row_.cells[i] = cell(static_cast<Field>(i));
  }
  row_.origin = Origin{document_, record_.line, record_.byte};
  return Step::row;
}

std::string_view CsvReader::cell(Field field) const {
  const auto& column = map_.column[static_cast<std::size_t>(field)];
  return column && *column < record_.cells.size() ? trimmed(record_.cells[*column])
                                                  : std::string_view{};
}

/// Too many cells are an error; too few are one only in a last line that breaks off.
bool CsvReader::has_good_shape() {
  const std::size_t cells = record_.cells.size();
  bool extra = false;
  for (std::size_t i = map_.columns; i < cells; ++i) extra = extra || !record_.cells[i].empty();
  if (extra) {
    reject(RejectionKind::malformed_row,
           fmt::format("The row has {} cells, the header has {}.", cells, map_.columns),
           fmt::format("Put quotes around cells that contain a {}, for instance prices such as "
                       "\"79,90\".",
                       delimiter_name(delimiter_)));
    return false;
  }
  if (cells < map_.columns && !record_.ended) {
    reject(RejectionKind::malformed_row,
           fmt::format("The file breaks off within this row: {} of {} cells.", cells, map_.columns),
           "Export or copy the file again; it is cut short.");
    return false;
  }
  return true;
}

bool CsvReader::reject_fault() {
  switch (record_.fault) {
    case RecordFault::none:
      return false;
    case RecordFault::unclosed_quote:
      reject(RejectionKind::malformed_row, "A quote opens in this row and is never closed.",
             "Close it, or double a quote that belongs to the text (\"\").");
      break;
    case RecordFault::text_after_quote:
      reject(RejectionKind::malformed_row, "Text follows a closing quote within a cell.",
             "Double the quotes that belong to the text (\"\").");
      break;
    case RecordFault::too_long:
      reject(RejectionKind::over_limit,
             fmt::format("The row is longer than {} MiB.", kMaxRecordBytes >> 20U),
             "Check that the file is a table with one row a line.");
      break;
    case RecordFault::too_many_cells:
      reject(RejectionKind::over_limit, fmt::format("The row has more than {} cells.", kMaxCells),
             "Check the delimiter and the quotes of this row.");
      break;
  }
  return true;
}

bool CsvReader::reject_bad_bytes() {
  if (is_plain_ascii(record_.text)) return false;
  const auto bad = first_bad_byte(record_.text);
  if (!bad) return false;
  const auto byte = static_cast<unsigned char>(record_.text[*bad]);
  reject(RejectionKind::bad_encoding,
         byte == 0 ? fmt::format("The row holds a NUL byte at byte {}.", record_.byte + *bad)
                   : fmt::format("The row holds a byte 0x{:02X} at byte {} that is not UTF-8.",
                                 byte, record_.byte + *bad),
         "Save the file as \"CSV UTF-8\", or repair this row.");
  rejection_.byte = record_.byte + *bad;
  return true;
}

/// So that a line with a refused row is never called gone. A record that could not be split by the
/// rules is split at every delimiter: its first cells are usually sound.
void CsvReader::name_rejected_line() {
  const bool split = record_.cells.empty();
  for (std::string_view rest = record_.text; split && !rest.empty();) {
    const std::size_t at = std::min(rest.find(delimiter_), rest.size());
    record_.cells.push_back(unquoted(rest.substr(0, at)));
    rest.remove_prefix(std::min(at + 1, rest.size()));
  }
  const auto sound = [&](Field field) {
    const std::string text = excerpt_of(cell(field), kExcerptBytes);
    return first_bad_byte(text) || text.find('"') != std::string::npos ? std::string{} : text;
  };
  rejection_.line_code = sound(Field::line_code);
  rejection_.name = sound(Field::name);
}

void CsvReader::reject(RejectionKind kind, std::string what, std::string how_to_fix) {
  rejection_ = Rejection{};
  rejection_.document = document_;
  rejection_.line = record_.line;
  rejection_.byte = record_.byte;
  rejection_.kind = kind;
  rejection_.what = std::move(what);
  rejection_.how_to_fix = std::move(how_to_fix);
  rejection_.excerpt = excerpt_of(record_.text, kExcerptBytes);
}

RowReader::Step CsvReader::refuse_document(RejectionKind kind, std::string what,
                                           std::string how_to_fix) {
  reject(kind, std::move(what), std::move(how_to_fix));
  state_ = State::end;
  return Step::rejection;
}

std::string CsvReader::mapping() const {
  if (map_.columns == 0) return {};
  return fmt::format("delimiter={} {}", delimiter_name(delimiter_), to_string(map_));
}

}  // namespace

std::unique_ptr<RowReader> open_csv(ByteSource& source, std::uint32_t document) {
  return std::make_unique<CsvReader>(source, document);
}

}  // namespace rangebook
