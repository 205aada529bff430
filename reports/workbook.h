// Writes tables as a workbook (ECMA-376, by libxlsxwriter) that a spreadsheet can calculate with.
#pragma once

#include <string>
#include <vector>

#include "reports/sheet.h"

namespace rangebook {

/// Real numbers, dates and amounts in their currency; header row frozen and filterable, columns as
/// wide as their content. No cell can run: every text is written as a text. `made` is said to be
/// the day of making, so that the same sheets give the same bytes. Sheets without rows are left
/// out; rows beyond what a sheet can hold (1,048,576) throw Error, as does a folder for temporary
/// files that cannot be written.
std::string workbook_of(const std::vector<Sheet>& sheets, Day made);

/// A report: headlines, tables, notes, sources.
std::string page_workbook(const ReportPage& page, Day made);

/// All changes, with the captures they lie between.
std::string changes_workbook(const ChangeSet& set);

}  // namespace rangebook
