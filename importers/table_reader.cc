// Records to raw rows; whatever cannot be a row becomes a rejection with line, reason and remedy.
#include "importers/table_reader.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <optional>

#include "importers/byte_search.h"
#include "importers/cell_split.h"
#include "importers/column_examples.h"
#include "importers/column_guess.h"
#include "importers/csv_records.h"
#include "importers/table_rows.h"
#include "importers/utf8.h"

namespace rangebook {
namespace {

class TableReader final : public RowReader {
 public:
  TableReader(std::unique_ptr<RecordSource> source, std::uint32_t document,
              const TableOptions& options)
      : rows_(std::move(source), options), document_(document), decimal_(options.decimal) {}

  Step next() override;
  const RawRow& row() const override { return row_; }
  const Rejection& rejection() const override { return rejection_; }
  std::string mapping() const override;
  std::optional<char> decimal_sign() const override { return decimal_; }
  void keep_examples() override { examples_.emplace(); }
  DocumentPreview preview() const override;

 private:
  enum class State : std::uint8_t { header, rows, end };

  Step read_header();
  bool guess_meanings();
  Step doubt_guess();
  Step refuse_header();
  Step read_row();
  Step end_document();
  bool has_good_shape();
  void reject(RejectionKind kind, std::string what, std::string how_to_fix);
  Step refuse_document(DocumentFault fault);
  bool reject_fault();
  bool reject_bad_bytes();
  void doubt_row();
  void name_rejected_line();
  std::string_view cell(Field field) const;
  std::string_view cell_at(const std::optional<std::size_t>& column) const;
  void fill_row();
  void take_apart();

  TableRows rows_;
  std::uint32_t document_;
  std::optional<char> decimal_;
  State state_ = State::header;
  bool doubted_ = false;  ///< the doubt about the last row is still to be told
  LabelMemo labels_;
  Record record_;
  RawRow row_;
  Rejection rejection_;
  std::optional<ColumnExamples> examples_;
};

RowReader::Step TableReader::next() {
  if (doubted_) {
    doubted_ = false;
    doubt_row();
    return Step::rejection;
  }
  if (state_ == State::header) {
    if (const Step step = read_header(); step != Step::row) return step;
  }
  return state_ == State::end ? Step::end : read_row();
}

/// `row` when the header was understood and rows can be read.
RowReader::Step TableReader::read_header() {
  if (!rows_.open()) {
    return refuse_document(rows_.source().fault().value_or(DocumentFault{
        RejectionKind::unreadable_document, "The file is empty.", "Export or save it again."}));
  }
  state_ = State::rows;
  const bool guessed = rows_.names().empty() && guess_meanings();
  if (examples_) examples_->begin(rows_.names(), rows_.map(), rows_.ahead());
  if (guessed) return doubt_guess();
  return rows_.map().has(Field::name) ? Step::row : refuse_header();
}

bool TableReader::guess_meanings() {
  const std::vector<KeptRecord> records(rows_.ahead().begin(), rows_.ahead().end());
  FieldMap map = guess_columns(records, rows_.columns(), rows_.map());
  if (!map.guessed || map.known() == rows_.map().known()) return false;
  rows_.set_map(std::move(map));
  return true;
}

RowReader::Step TableReader::doubt_guess() {
  reject(RejectionKind::no_name_column,
         fmt::format("The table has no line of column names; their meaning was guessed from the "
                     "content: {}.",
                     to_string(rows_.map())),
         "Check the guess; to be sure, put the column names into the first line.");
  rejection_.refused = Refused::nothing;
  return Step::rejection;
}

RowReader::Step TableReader::refuse_header() {
  const auto& names = rows_.names();
  return refuse_document(
      {RejectionKind::no_name_column,
       names.empty()
           ? std::string("The table has no line of column names.")
           : fmt::format("The table has no column called \"name\"; its columns are: {}.",
                         excerpt_of(fmt::format("{}", fmt::join(names, ", ")), kExcerptBytes)),
       "Put the column names into the first line; \"name\" is the one that is always needed. Or "
       "say "
       "which column it is: --column \"Artikel=name\"."});
}

RowReader::Step TableReader::read_row() {
  if (!rows_.next(record_)) return end_document();
  if (reject_fault() || reject_bad_bytes() || !has_good_shape()) {
    name_rejected_line();
    return Step::rejection;
  }
  fill_row();
  doubted_ = rows_.repaired();
  return Step::row;
}

RowReader::Step TableReader::end_document() {
  state_ = State::end;
  auto fault = rows_.source().fault();
  return fault ? refuse_document(std::move(*fault)) : Step::end;
}

void TableReader::fill_row() {
  for (std::size_t i = 0; i < kFieldCount; ++i) {
    row_.cells[i] = cell(static_cast<Field>(i));
  }
  row_.origin = Origin{document_, record_.line, record_.byte};
  take_apart();
  if (examples_ && rows_.further_tables() == 0) examples_->take(record_, row_);
}

/// Cells that hold more than their field.
void TableReader::take_apart() {
  const FieldMap& map = rows_.map();
  if (map.colour_size) {
    const auto parts = split_colour_size(cell_at(map.colour_size));
    row_[Field::colour] = parts.colour;
    row_[Field::size] = parts.size;
  }
  for (const Field field : {Field::size, Field::colour, Field::composition}) {
    row_[field] = labels_.without_label(row_[field], field);
  }
  if (may_hold_two_prices(row_[Field::price]) && row_[Field::full_price].empty()) {
    if (const auto parts = split_price(row_[Field::price])) {
      row_[Field::price] = parts->now;
      row_[Field::full_price] = parts->was;
    }
  }
  if (!map.currency.empty() && row_[Field::currency].empty()) row_[Field::currency] = map.currency;
}

std::string_view TableReader::cell_at(const std::optional<std::size_t>& column) const {
  return column && *column < record_.cells.size() ? without_blanks(record_.cells[*column])
                                                  : std::string_view{};
}

std::string_view TableReader::cell(Field field) const {
  const auto i = static_cast<std::size_t>(field);
  const std::string_view own = cell_at(rows_.map().column[i]);
  return own.empty() && rows_.map().fallback[i] ? cell_at(rows_.map().fallback[i]) : own;
}

/// Too many cells are an error; too few are one only in a last line that breaks off.
bool TableReader::has_good_shape() {
  const std::size_t cells = record_.cells.size();
  const std::size_t columns = rows_.columns();
  bool extra = false;
  for (std::size_t i = columns; i < cells; ++i) extra = extra || !record_.cells[i].empty();
  if (extra) {
    reject(RejectionKind::malformed_row,
           fmt::format("The row has {} cells, the header has {}.", cells, columns),
           rows_.source().extra_cells_remedy());
    return false;
  }
  if (cells < columns && !record_.ended) {
    reject(RejectionKind::malformed_row,
           fmt::format("The file breaks off within this row: {} of {} cells.", cells, columns),
           "Export or copy the file again; it is cut short.");
    return false;
  }
  return true;
}

bool TableReader::reject_fault() {
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

bool TableReader::reject_bad_bytes() {
  if (!rows_.source().may_hold_bad_bytes()) return false;
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

void TableReader::doubt_row() {
  reject(RejectionKind::malformed_row,
         "This line breaks the rules of its table (a stray quote, another delimiter); it was read "
         "the one way that gives a cell to each column.",
         "Check its cells; double the quotes that belong to the text (\"\").");
  rejection_.refused = Refused::nothing;
  name_rejected_line();
}

/// So that a line with a refused row is never called gone. The first cells of a record that could
/// not be split by the rules are usually sound.
void TableReader::name_rejected_line() {
  if (record_.cells.empty()) rows_.source().split_roughly(record_);
  const auto sound = [&](Field field) {
    const std::string text = excerpt_of(cell(field), kExcerptBytes);
    return first_bad_byte(text) || text.find('"') != std::string::npos ? std::string{} : text;
  };
  rejection_.line_code = sound(Field::line_code);
  rejection_.name = sound(Field::name);
}

void TableReader::reject(RejectionKind kind, std::string what, std::string how_to_fix) {
  rejection_ = Rejection{};
  rejection_.document = document_;
  rejection_.line = record_.line;
  rejection_.byte = record_.byte;
  rejection_.kind = kind;
  rejection_.what = std::move(what);
  rejection_.how_to_fix = std::move(how_to_fix);
  rejection_.excerpt = excerpt_of(
      record_.text.empty() ? fmt::format("{}", fmt::join(record_.cells, " | ")) : record_.text,
      kExcerptBytes);
}

RowReader::Step TableReader::refuse_document(DocumentFault fault) {
  reject(fault.kind, std::move(fault.what), std::move(fault.how_to_fix));
  state_ = State::end;
  return Step::rejection;
}

std::string TableReader::mapping() const {
  if (rows_.map().columns == 0) return {};
  const std::string source = rows_.source().description();
  const std::string shape = rows_.description();
  return fmt::format("{}{}{}{}{}", source, source.empty() ? "" : " ", to_string(rows_.map()),
                     shape.empty() ? "" : "; ", shape);
}

DocumentPreview TableReader::preview() const {
  DocumentPreview preview;
  preview.detected = rows_.source().detections();
  if (rows_.map().columns == 0) return preview;
  for (auto& found : rows_.detections()) preview.detected.push_back(std::move(found));
  preview.missing = rows_.map().missing;
  ColumnExamples columns;
  if (!examples_) columns.begin(rows_.names(), rows_.map(), {});
  preview.columns = examples_ ? examples_->columns() : columns.columns();
  return preview;
}

}  // namespace

std::unique_ptr<RowReader> open_table(std::unique_ptr<RecordSource> source, std::uint32_t document,
                                      const TableOptions& options) {
  return std::make_unique<TableReader>(std::move(source), document, options);
}

}  // namespace rangebook
