// Unpacking, XML and rows in step: each piece of the sheet is turned into a batch of rows, and the
// next piece is read when those are used up.
#include "importers/xlsx_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <vector>

#include "importers/byte_search.h"
#include "importers/xml_scan.h"
#include "importers/zip_walk.h"

namespace rangebook {
namespace {

/// A cell holds at most this many characters (Excel's own limit is 32,767).
constexpr std::size_t kMaxCellBytes = std::size_t{1} << 20U;

/// Rows of one piece of the sheet, cells in one buffer.
struct Batch {
  struct Row {
    std::uint64_t number = 0;
    std::size_t first = 0;  ///< index into ends
    std::size_t cells = 0;
    bool too_many = false;
  };
  std::string text;
  std::vector<std::size_t> ends;
  std::vector<Row> rows;

  void clear() {
    text.clear();
    ends.clear();
    rows.clear();
  }
};

enum class CellType : std::uint8_t { number, shared, boolean, text };

CellType type_of(std::string_view type) {
  if (type == "n") return CellType::number;
  if (type == "s") return CellType::shared;
  return type == "b" ? CellType::boolean : CellType::text;
}

/// Turns the events of a sheet into rows of a batch.
class SheetEvents final : public XmlEvents {
 public:
  SheetEvents(const WorkbookParts& parts, std::vector<MergedCells> merges)
      : parts_(parts), merges_(std::move(merges)) {}

  void start(std::string_view name, const XmlAttributes& attributes) override {
    if (name == "c") {
      start_cell(attributes);
    } else if (name == "v") {
      in_value_ = true;
    } else if (name == "t") {
      in_value_ = !in_reading_;
    } else if (name == "row") {
      start_row(attributes);
    } else if (name == "rPh") {
      in_reading_ = true;
    }
  }

  void end(std::string_view name) override {
    if (name == "c") {
      end_cell();
    } else if (name == "v" || name == "t") {
      in_value_ = false;
    } else if (name == "row") {
      end_row();
    } else if (name == "rPh") {
      in_reading_ = false;
    }
  }

  void text(std::string_view text) override {
    if (in_value_ && value_.size() < kMaxCellBytes) value_ += text;
  }

  Batch batch;

 private:
  void start_row(const XmlAttributes& attributes) {
    row_ += 1;
    if (const auto number = attributes.find("r")) {
      std::from_chars(number->data(), number->data() + number->size(), row_);
    }
    cells_.clear();
    row_text_.clear();
    column_ = 0;
    too_many_ = false;
  }

  void start_cell(const XmlAttributes& attributes) {
    type_ = CellType::number;
    style_ = 0;
    // One pass, since there are millions of cells.
    for (const auto& [name, value] : attributes) {
      if (name == "r") {
        if (const auto place = read_reference(value)) column_ = place->column;
      } else if (name == "t") {
        type_ = type_of(value);
      } else if (name == "s") {
        std::from_chars(value.data(), value.data() + value.size(), style_);
      }
    }
    value_.clear();
  }

  void end_cell() {
    if (column_ >= kMaxCells) {
      too_many_ = too_many_ || !value_.empty();
      return;
    }
    while (cells_.size() < column_) cells_.push_back(row_text_.size());
    if (cells_.size() == column_) {
      append_value();
      cells_.push_back(row_text_.size());
    }
    ++column_;
  }

  void append_value() {
    switch (type_) {
      case CellType::text:
        row_text_ += value_;
        break;
      case CellType::boolean:
        if (!value_.empty()) row_text_ += value_ == "1" || value_ == "true" ? "true" : "false";
        break;
      case CellType::shared:
        append_shared();
        break;
      case CellType::number:
        if (!value_.empty()) append_number();
        break;
    }
  }

  void append_shared() {
    std::size_t index = parts_.strings.size();
    std::from_chars(value_.data(), value_.data() + value_.size(), index);
    if (index < parts_.strings.size()) row_text_ += parts_.strings.at(index);
  }

  void append_number() {
    using Kind = NumberFormat::Kind;
    static const NumberFormat kGeneral;
    const NumberFormat& format = style_ < parts_.formats.size() ? parts_.formats[style_] : kGeneral;
    if (format.kind == Kind::date || format.kind == Kind::time) {
      row_text_ += date_text(value_, parts_.from_1904).value_or(short_number(value_));
    } else if (format.kind == Kind::percent) {
      row_text_ += percent_text(value_);
    } else {
      row_text_ += plain_decimal(short_number(value_));
      if (!format.currency.empty()) row_text_.append(" ").append(format.currency);
    }
  }

  void end_row() {
    if (!merges_.empty()) fill_merges();
    const bool empty = row_text_.empty() && !too_many_;
    if (empty) return;
    const std::size_t base = batch.text.size();
    batch.rows.push_back({row_, batch.ends.size(), cells_.size(), too_many_});
    batch.text += row_text_;
    for (const std::size_t end : cells_) batch.ends.push_back(base + end);
  }

  std::string_view cell(std::size_t column) const {
    if (column >= cells_.size()) return {};
    const std::size_t from = column == 0 ? 0 : cells_[column - 1];
    return std::string_view(row_text_).substr(from, cells_[column] - from);
  }

  /// Gives the value of the first cell of each merged block to the rows below it.
  void fill_merges() {
    merge_values_.resize(merges_.size());
    std::vector<std::string> filled;
    for (std::size_t i = 0; i < merges_.size(); ++i) {
      const MergedCells& merge = merges_[i];
      if (row_ < merge.first_row || row_ > merge.last_row) continue;
      if (row_ == merge.first_row) merge_values_[i] = cell(merge.column);
      if (row_ == merge.first_row || !cell(merge.column).empty()) continue;
      if (filled.empty()) {
        for (std::size_t c = 0; c < cells_.size(); ++c) filled.emplace_back(cell(c));
      }
      if (filled.size() <= merge.column) filled.resize(merge.column + 1);
      filled[merge.column] = merge_values_[i];
    }
    if (!filled.empty()) set_cells(filled);
  }

  void set_cells(const std::vector<std::string>& cells) {
    row_text_.clear();
    cells_.clear();
    for (const auto& text : cells) {
      row_text_ += text;
      cells_.push_back(row_text_.size());
    }
  }

  const WorkbookParts& parts_;
  std::vector<MergedCells> merges_;
  std::vector<std::string> merge_values_;
  std::uint64_t row_ = 0;
  std::size_t column_ = 0;
  bool too_many_ = false;
  std::vector<std::size_t> cells_;  ///< ends of the cells of this row in row_text_
  std::string row_text_;
  CellType type_ = CellType::number;
  std::size_t style_ = 0;
  std::string value_;
  bool in_value_ = false;
  bool in_reading_ = false;
};

class MergeEvents final : public XmlEvents {
 public:
  void start(std::string_view name, const XmlAttributes& attributes) override {
    if (name != "mergeCell" || merges.size() >= kMaxMerges) return;
    const std::string_view range = attributes.find("ref").value_or("");
    const std::size_t colon = std::min(range.find(':'), range.size());
    const auto from = read_reference(range.substr(0, colon));
    const auto to = read_reference(range.substr(std::min(colon + 1, range.size())));
    if (!from || !to || from->row >= to->row || from->column >= kMaxCells) return;
    merges.push_back({from->row, to->row, from->column});
  }
  void end(std::string_view) override {}
  void text(std::string_view) override {}

  std::vector<MergedCells> merges;
};

bool move_to(ZipWalk& walk, const std::string& path) {
  while (walk.next()) {
    if (walk.path() == path) return true;
  }
  return false;
}

/// The merged cells of a sheet, which it lists behind its rows: read on its own, only when the
/// sheet is small and names any.
std::vector<MergedCells> merges_of(std::string_view bytes, const std::string& path) {
  ZipWalk walk(bytes);
  if (!move_to(walk, path) || walk.stated_bytes().value_or(0) > kMaxMergeBytes) return {};
  const std::string sheet = walk.read_all(kMaxMergeBytes);
  const std::size_t list = sheet.rfind("<mergeCells");
  if (sheet.size() > kMaxMergeBytes || list == sheet.npos) return {};
  const std::size_t end = sheet.find("</mergeCells>", list);
  if (end == sheet.npos) return {};
  MergeEvents events;
  XmlScan parser(events);
  parser.feed(std::string_view(sheet).substr(list, end + 13 - list), true);
  return std::move(events.merges);
}

class SheetRecords final : public RecordSource {
 public:
  SheetRecords(std::string_view bytes, const WorkbookParts& parts, const SheetEntry& sheet,
               std::vector<MergedCells> merges)
      : name_(sheet.name), walk_(bytes), events_(parts, std::move(merges)), parser_(events_) {
    at_end_ = !move_to(walk_, sheet.path);
    if (at_end_) fail(fmt::format("the sheet \"{}\" is not in it", name_));
  }

  bool next(Record& record) override;
  std::optional<DocumentFault> fault() const override { return fault_; }
  bool may_hold_bad_bytes() const override { return false; }
  std::string description() const override { return fmt::format("sheet=\"{}\"", name_); }
  std::string extra_cells_remedy() const override {
    return "Give the column a name in the header row, or empty its cells.";
  }

 private:
  void read_piece();
  void fail(std::string_view problem);

  std::string name_;
  ZipWalk walk_;
  SheetEvents events_;
  XmlScan parser_;
  std::size_t row_ = 0;  ///< next one of the batch
  std::uint64_t last_number_ = 0;
  bool at_end_ = false;
  std::optional<DocumentFault> fault_;
};

bool SheetRecords::next(Record& record) {
  while (row_ == events_.batch.rows.size()) {
    if (at_end_) return false;
    events_.batch.clear();
    row_ = 0;
    read_piece();
  }
  const Batch& batch = events_.batch;
  const Batch::Row& row = batch.rows[row_++];
  record.cells.clear();
  record.text = {};
  record.line = row.number;
  record.byte = 0;
  record.ended = true;
  record.after_gap = last_number_ != 0 && row.number > last_number_ + 1;
  record.fault = row.too_many ? RecordFault::too_many_cells : RecordFault::none;
  last_number_ = row.number;
  for (std::size_t i = row.first; i < row.first + row.cells && !row.too_many; ++i) {
    const std::size_t from = i == 0 ? 0 : batch.ends[i - 1];
    record.cells.push_back(std::string_view(batch.text).substr(from, batch.ends[i] - from));
  }
  return true;
}

void SheetRecords::read_piece() {
  const std::string_view piece = walk_.read();
  at_end_ = piece.empty();
  if (walk_.fault()) {
    fault_ = walk_.fault();
  } else if (!parser_.feed(piece, at_end_)) {
    fail(parser_.problem());
  }
}

void SheetRecords::fail(std::string_view problem) {
  at_end_ = true;
  fault_ = {RejectionKind::unreadable_document,
            fmt::format("The workbook is damaged: {}.", problem),
            "Open it in a spreadsheet program and save it again as .xlsx."};
}

}  // namespace

std::optional<CellPlace> read_reference(std::string_view text) {
  constexpr std::size_t kMaxLetters = 3;
  CellPlace place;
  std::size_t letters = 0;
  while (letters < text.size() && is_ascii_letter(text[letters])) {
    if (letters == kMaxLetters) return std::nullopt;
    place.column =
        place.column * 26 + static_cast<std::size_t>(ascii_lower(text[letters]) - 'a') + 1;
    ++letters;
  }
  const char* const end = text.data() + text.size();
  const auto [at, error] = std::from_chars(text.data() + letters, end, place.row);
  if (letters == 0 || error != std::errc{} || at != end || place.row == 0) return std::nullopt;
  --place.column;
  return place;
}

std::unique_ptr<RecordSource> open_sheet(std::string_view bytes, const WorkbookParts& parts,
                                         const SheetEntry& sheet, SheetDetail detail) {
  auto merges =
      detail == SheetDetail::whole ? merges_of(bytes, sheet.path) : std::vector<MergedCells>{};
  return std::make_unique<SheetRecords>(bytes, parts, sheet, std::move(merges));
}

}  // namespace rangebook
