// The rows of one sheet of a workbook, as they are unpacked: memory is bounded by the shared
// strings and one piece of the sheet, not by its rows.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "importers/record_source.h"
#include "importers/xlsx_parts.h"

namespace rangebook {

/// Cells merged downwards: people merge the name of a line over its sizes. Cells merged sideways
/// stand for their first column only. Rows from 1, inclusive; the column from 0.
struct MergedCells {
  std::uint64_t first_row = 0;
  std::uint64_t last_row = 0;
  std::size_t column = 0;

  bool operator==(const MergedCells&) const = default;
};

/// Sheets that unpack to more bytes are read without their merged cells, which are listed behind
/// the rows; people merge cells in small sheets.
inline constexpr std::size_t kMaxMergeBytes = std::size_t{32} << 20U;
inline constexpr std::size_t kMaxMerges = 10'000;

/// Column, from 0, and row, from 1, of a reference such as `AB12`; nothing for any other text.
struct CellPlace {
  std::size_t column = 0;
  std::uint64_t row = 0;
};
std::optional<CellPlace> read_reference(std::string_view text);

/// Whether merged cells count: they cost another walk over the sheet.
enum class SheetDetail : std::uint8_t { whole, without_merges };

/// The rows of `sheet`. `bytes` and `parts` must outlive the source. Empty rows are left out. A
/// cell merged with others gives its value to all of them. Formulas give the value that was
/// computed last.
std::unique_ptr<RecordSource> open_sheet(std::string_view bytes, const WorkbookParts& parts,
                                         const SheetEntry& sheet,
                                         SheetDetail detail = SheetDetail::whole);

}  // namespace rangebook
