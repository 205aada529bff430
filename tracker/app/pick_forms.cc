// One line a form; everything else is in reports/.
#include "tracker/app/pick_forms.h"

#include "reports/due_report.h"
#include "reports/pick_report.h"

namespace rangebook {

std::string picks_in(const PickSheet& sheet, PickView view, const OutputChoice& output) {
  if (output.format == "json") return picks_json(sheet);
  if (output.format == "csv") return picks_csv(sheet);
  switch (view) {
    case PickView::list:
      return page_in(picks_page(sheet), output);
    case PickView::follow:
      return page_in(follow_up_page(sheet), output);
    case PickView::notes:
      return page_in(show_notes_page(sheet), output);
  }
  return {};
}

std::string due_in(const DueList& list, const OutputChoice& output) {
  if (output.format == "json") return due_json(list);
  if (output.format == "csv") return due_csv(list);
  return page_in(due_page(list), output);
}

}  // namespace rangebook
