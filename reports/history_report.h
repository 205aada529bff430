// Everything known of one line, in the forms people and programs read.
#pragma once

#include <string>

#include "reports/report_page.h"
#include "schema/line_history.h"

namespace rangebook {

/// Headlines, the line capture by capture, what changed, and why it is one line; for text, Markdown
/// and a page (reports/report_page.h).
ReportPage history_page(const LineHistory& history);

/// `rangebook.history/1`; see schema/FORMAT.md.
std::string history_json(const LineHistory& history);

/// One row a capture, safe to open in a spreadsheet.
std::string history_csv(const LineHistory& history);

}  // namespace rangebook
