// What is due, in the forms people and programs read.
#pragma once

#include <string>

#include "reports/report_page.h"
#include "schema/due.h"

namespace rangebook {

ReportPage due_page(const DueList& list);
/// `rangebook.due/1`, see schema/FORMAT.md.
std::string due_json(const DueList& list);
/// Shops, then picks, one row each.
std::string due_csv(const DueList& list);

}  // namespace rangebook
