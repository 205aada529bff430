// Choosing the sheet; the rest is the table reader's.
#include "importers/xlsx_reader.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "importers/document_kind.h"
#include "importers/header_words.h"
#include "importers/table_reader.h"
#include "importers/table_rows.h"
#include "importers/xlsx_sheet.h"

namespace rangebook {
namespace {

/// Sheets beyond this are not looked into for a column of names.
constexpr std::size_t kMaxSearchedSheets = 32;

/// The stream that holds an encrypted package in an OLE container (MS-OFFCRYPTO), in UTF-16.
constexpr std::string_view kEncryptedPackage("E\0n\0c\0r\0y\0p\0t\0e\0d\0P\0a\0c\0k\0a\0g\0e", 31);

std::optional<DocumentFault> container_fault(std::string_view bytes) {
  if (bytes.size() > kMaxWorkbookBytes) {
    return DocumentFault{
        RejectionKind::over_limit,
        fmt::format("The workbook is larger than {} MiB.", kMaxWorkbookBytes >> 20U),
        "Save the sheet that matters as CSV."};
  }
  const DocumentKind kind = kind_of(bytes);
  if (kind == DocumentKind::old_workbook) {
    const bool locked = bytes.find(kEncryptedPackage) != bytes.npos;
    return DocumentFault{
        RejectionKind::unreadable_document,
        locked ? "The workbook is protected by a password."
               : "This is a workbook in the old format (.xls).",
        locked ? "Open it in a spreadsheet program, take the password off, and save it again."
               : "Open it in a spreadsheet program and save it as .xlsx."};
  }
  if (kind != DocumentKind::zip) {
    return DocumentFault{RejectionKind::unreadable_document,
                         bytes.empty() ? std::string("The file is empty.")
                                       : fmt::format("This is no workbook but {}.", spoken(kind)),
                         "Open it in a spreadsheet program and save it as .xlsx."};
  }
  return std::nullopt;
}

/// A workbook with the rows of its chosen sheet; it owns what those refer to.
class Workbook final : public RecordSource {
 public:
  Workbook(std::string bytes, const TableOptions& options)
      : bytes_(std::move(bytes)), options_(options) {}

  bool next(Record& record) override {
    if (!open_) open();
    return rows_ && rows_->next(record);
  }
  std::optional<DocumentFault> fault() const override {
    return parts_.fault || !rows_ ? parts_.fault : rows_->fault();
  }
  bool may_hold_bad_bytes() const override { return false; }
  std::string description() const override;
  std::vector<Detection> detections() const override;
  std::string extra_cells_remedy() const override {
    return "Give the column a name in the header row, or empty its cells.";
  }

 private:
  void open();
  const SheetEntry* named_sheet();
  const SheetEntry* best_sheet();
  std::string other_sheets() const;
  bool has_names(const SheetEntry& sheet);

  const std::string bytes_;
  const TableOptions options_;
  bool open_ = false;
  WorkbookParts parts_;
  const SheetEntry* sheet_ = nullptr;
  std::unique_ptr<RecordSource> rows_;
};

void Workbook::open() {
  open_ = true;
  parts_.fault = container_fault(bytes_);
  if (parts_.fault) return;
  parts_ = read_workbook_parts(bytes_);
  if (parts_.fault) return;
  sheet_ = options_.sheet.empty() ? best_sheet() : named_sheet();
  if (sheet_ != nullptr) rows_ = open_sheet(bytes_, parts_, *sheet_);
}

const SheetEntry* Workbook::named_sheet() {
  std::vector<std::string> names;
  for (const auto& sheet : parts_.sheets) {
    if (folded_header(sheet.name) == folded_header(options_.sheet)) return &sheet;
    names.push_back('"' + sheet.name + '"');
  }
  parts_.fault = {RejectionKind::unreadable_document,
                  fmt::format("The workbook has no sheet \"{}\".", options_.sheet),
                  fmt::format("Name one of: {}.", fmt::join(names, ", "))};
  return nullptr;
}

const SheetEntry* Workbook::best_sheet() {
  const SheetEntry* first = nullptr;
  std::size_t searched = 0;
  for (const auto& sheet : parts_.sheets) {
    if (sheet.hidden) continue;
    if (first == nullptr) first = &sheet;
    if (++searched <= kMaxSearchedSheets && has_names(sheet)) return &sheet;
  }
  return first == nullptr ? &parts_.sheets.front() : first;
}

bool Workbook::has_names(const SheetEntry& sheet) {
  TableRows rows(open_sheet(bytes_, parts_, sheet, SheetDetail::without_merges), {});
  return rows.open() && rows.map().has(Field::name);
}

/// The names of the sheets that are not read: `"Notes", "Old" (hidden)`.
std::string Workbook::other_sheets() const {
  std::vector<std::string> others;
  for (const auto& sheet : parts_.sheets) {
    if (&sheet != sheet_)
      others.push_back('"' + sheet.name + (sheet.hidden ? "\" (hidden)" : "\""));
  }
  return fmt::format("{}", fmt::join(others, ", "));
}

std::string Workbook::description() const {
  if (sheet_ == nullptr) return {};
  const std::string others = other_sheets();
  return fmt::format("sheet=\"{}\"{}", sheet_->name,
                     others.empty() ? "" : fmt::format(" (not read: {})", others));
}

std::vector<Detection> Workbook::detections() const {
  if (sheet_ == nullptr) return {};
  std::vector<Detection> found{{"sheet", sheet_->name, !options_.sheet.empty()}};
  if (auto others = other_sheets(); !others.empty()) {
    found.push_back({"sheets not read", std::move(others), false});
  }
  return found;
}

}  // namespace

std::unique_ptr<RecordSource> open_xlsx_records(std::string bytes, const TableOptions& options) {
  return std::make_unique<Workbook>(std::move(bytes), options);
}

std::unique_ptr<RowReader> open_xlsx(std::string bytes, std::uint32_t document,
                                     const TableOptions& options) {
  return open_table(open_xlsx_records(std::move(bytes), options), document, options);
}

std::string read_workbook_bytes(ByteSource& source) {
  std::string bytes;
  for (auto chunk = source.next_chunk(); !chunk.empty(); chunk = source.next_chunk()) {
    if (bytes.size() > kMaxWorkbookBytes) break;
    bytes += chunk;
  }
  return bytes;
}

}  // namespace rangebook
