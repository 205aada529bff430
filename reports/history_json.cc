// A line's history for other programs, key by key in the order of schema/FORMAT.md.
#include <fmt/format.h>

#include "reports/changes_json.h"
#include "reports/history_report.h"
#include "reports/json_writer.h"
#include "reports/seen_line.h"

namespace rangebook {
namespace {

class HistoryWriter {
 public:
  std::string write(const LineHistory& history) {
    json_.begin_object();
    json_.member("format", "rangebook.history/1");
    json_.line_break();
    json_.member("shop", history.shop.slug);
    json_.member("id", history.id);
    json_.member("reference", history.reference);
    json_.line_break();
    json_.key("captures");
    json_.begin_array();
    for (const HistoryEntry& each : history.entries) {
      json_.line_break();
      entry(each);
    }
    json_.end_array();
    pairs("waiting", history.waiting);
    pairs("decided", history.decided);
    json_.line_break();
    json_.end_object();
    return json_.take() + '\n';
  }

 private:
  void entry(const HistoryEntry& each) {
    json_.begin_object();
    json_.member("capture", each.capture.id);
    json_.member("season", each.capture.season);
    json_.member("date", to_string(each.capture.on));
    json_.member("scope", to_string(each.capture.scope));
    json_.member("presence", to_string(each.presence));
    json_.key("line");
    each.line ? write_seen_line(json_, *each.line) : json_.null();
    json_.key("changes");
    json_.begin_array();
    for (const Change& change : each.changes) {
      json_.line_break();
      json_.written(change_json(change));
    }
    json_.end_array();
    json_.member("link", each.link);
    json_.end_object();
  }

  void pairs(std::string_view name, const std::vector<LinkCase>& cases) {
    json_.line_break();
    json_.key(name);
    json_.begin_array();
    for (const LinkCase& each : cases) {
      json_.line_break();
      json_.begin_object();
      json_.member("reference", each.reference);
      json_.member("then", each.then.code.empty() ? each.then.name : each.then.code);
      json_.member("now", each.now.code.empty() ? each.now.name : each.now.code);
      json_.key("same");
      each.same ? json_.value(*each.same) : json_.null();
      json_.member("sentence", each.sentence);
      json_.end_object();
    }
    json_.end_array();
  }

  JsonWriter json_;
};

}  // namespace

std::string history_json(const LineHistory& history) { return HistoryWriter().write(history); }

}  // namespace rangebook
