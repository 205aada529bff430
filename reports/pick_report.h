// Picks in the forms people and programs read: as a list, with what became of them, as show notes.
#pragma once

#include <string>

#include "reports/json_writer.h"
#include "reports/report_page.h"
#include "schema/pick.h"

namespace rangebook {

/// The same picks by theme, those without one last; then by review date, then number.
PickSheet by_theme(PickSheet sheet);

/// One row a pick.
ReportPage picks_page(const PickSheet& sheet);
/// What became of each, and every change since with both figures.
ReportPage follow_up_page(const PickSheet& sheet);
/// Theme by theme and by review date: exact figures as last captured, with their day.
ReportPage show_notes_page(const PickSheet& sheet);

/// `rangebook.picks/1`, see schema/FORMAT.md; picks in the order of the sheet.
std::string picks_json(const PickSheet& sheet);
/// One pick of it.
void write_pick(JsonWriter& json, const FollowedPick& followed);
/// One row a pick, safe to open in a spreadsheet.
std::string picks_csv(const PickSheet& sheet);

}  // namespace rangebook
