// Tables of values: what CSV and workbooks are written from, so that both carry the same figures.
#pragma once

#include <string>
#include <vector>

#include "reports/report_page.h"
#include "schema/change.h"

namespace rangebook {

/// A text, or a number that is one.
struct SheetCell {
  std::string text;  ///< of any origin; empty where `value` says it all
  PieceValue value;
  bool operator==(const SheetCell&) const = default;
};

struct Sheet {
  std::string name;
  std::string title;  ///< a sentence: what it shows
  std::vector<std::string> columns;
  std::vector<std::vector<SheetCell>> rows;
  bool operator==(const Sheet&) const = default;
};

/// Header, then rows. Amounts as plain decimals without their currency, days by ISO 8601, shares as
/// parts of 1.
std::string csv_of(const Sheet& sheet);

/// Every table of a page in order, after its headlines. Cells with one figure and nothing else hold
/// it as a number; the numbers of their sources stand in the last column.
std::vector<Sheet> sheets_of(const ReportPage& page);

/// What stands around the tables: dates, paragraphs, cautions, and the sources by number.
Sheet notes_of(const ReportPage& page);
Sheet sources_of(const ReportPage& page);

/// One row a change: what `changes --format csv` writes.
Sheet changes_sheet(const ChangeSet& set);

}  // namespace rangebook
