// An XLSX workbook as a row reader: one sheet is read as a table.
#pragma once

#include <memory>
#include <string>

#include "importers/record_source.h"
#include "importers/row_reader.h"
#include "schema/table_options.h"

namespace rangebook {

/// Larger workbooks are refused: packed, a million rows take some 60 MiB.
inline constexpr std::size_t kMaxWorkbookBytes = std::size_t{512} << 20U;

/// Reads the sheet that `options.sheet` names, else the first visible one with a column of names,
/// else the first visible one. mapping() names the sheet and those that were not read. A workbook
/// with a password, an old one (.xls) or a damaged one gives one rejection. Lines are rows of the
/// sheet.
std::unique_ptr<RowReader> open_xlsx(std::string bytes, std::uint32_t document,
                                     const TableOptions& options = {});

/// The records of the sheet alone.
std::unique_ptr<RecordSource> open_xlsx_records(std::string bytes, const TableOptions& options);

/// The whole of `source`, for open_xlsx(); cut after kMaxWorkbookBytes + 1, which it then refuses.
std::string read_workbook_bytes(ByteSource& source);

}  // namespace rangebook
