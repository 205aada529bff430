// Shops by how long ago they were looked at, picks by when they are to be looked at again.
#include "reports/due_report.h"

#include <fmt/format.h>

#include <utility>

#include "reports/csv_writer.h"
#include "reports/json_facts.h"
#include "reports/pick_report.h"
#include "reports/pick_words.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

std::int64_t days_between(Day from, Day to) { return (to - from).count(); }

std::string scope_words(const Scope& scope) {
  if (scope.kind == Scope::Kind::all) return "the whole range";
  if (scope.kind == Scope::Kind::picks) return "picks only";
  std::string words;
  for (const std::string& each : scope.categories) {
    words += (words.empty() ? "" : ", ") + category_words(each);
  }
  return words;
}

Headline headline(const DueList& list) {
  Phrase phrase;
  phrase.day(list.request.on).words(": ");
  if (list.shops.empty() && list.picks.empty()) {
    phrase.words("nothing is due");
  } else {
    phrase.figure(counted(list.shops.size(), "shop", "shops")).words(" to go back to, ");
    phrase.figure(counted(list.picks.size(), "pick", "picks")).words(" to look at again");
  }
  if (list.request.ahead > 0) {
    phrase.words(" within ").count(static_cast<std::size_t>(list.request.ahead)).words(" days");
  }
  if (list.next) phrase.words("; next on ").day(*list.next);
  return {Theme::nothing, phrase.words(".")};
}

Phrase ago_cell(const std::optional<CaptureInfo>& capture, Day on) {
  if (!capture) return Phrase{}.words("never");
  return Phrase{}
      .day(capture->on)
      .words(", ")
      .figure(
          counted(static_cast<std::size_t>(days_between(capture->on, on)), "day ago", "days ago"));
}

BriefTable shops_table(const DueList& list) {
  BriefTable table{"shops",
                   "Longest ago first",
                   {{"shop", "Shop", false},
                    {"last", "Last capture", false},
                    {"scope", "It looked at", false},
                    {"whole", "Whole range", false},
                    {"due", "Due", false}},
                   {},
                   {},
                   false};
  for (const DueShop& each : list.shops) {
    table.rows.push_back({Phrase{}.name(shop_name(each.shop)), ago_cell(each.last, list.request.on),
                          Phrase{}.name(each.last ? scope_words(each.last->scope) : "-"),
                          ago_cell(each.whole, list.request.on), Phrase{}.day(each.due)});
  }
  return table;
}

BriefTable picks_table(const DueList& list, SourceList& sources) {
  BriefTable table{"picks",
                   "By review date",
                   {{"number", "Pick", true},
                    {"line", "Line", false},
                    {"shop", "Shop", false},
                    {"theme", "Theme", false},
                    {"review", "Due", false},
                    {"outcome", "What became of it", false}},
                   {},
                   {},
                   false};
  for (const FollowedPick& each : list.picks) {
    table.rows.push_back({Phrase{}.count(static_cast<std::size_t>(each.pick.number)),
                          pick_name(each), Phrase{}.name(shop_name(each.shop)),
                          Phrase{}.name(each.pick.theme), Phrase{}.day(each.pick.review.value()),
                          outcome_phrase(each, sources)});
  }
  return table;
}

/// What is not due, so that an empty list is not read as an empty book.
Phrase later_phrase(const DueList& list) {
  Phrase phrase;
  phrase.words("Not due yet: ").figure(counted(list.shops_later, "shop", "shops")).words(" and ");
  phrase.figure(counted(list.picks_later, "pick", "picks"));
  phrase.words(". Without a review date: ");
  phrase.figure(counted(list.picks_undated, "pick", "picks")).words(". A shop is due ");
  return phrase.count(static_cast<std::size_t>(list.request.every))
      .words(" days after its last capture.");
}

void capture_or_null(JsonWriter& json, std::string_view key,
                     const std::optional<CaptureInfo>& capture) {
  json.key(key);
  capture ? write_capture(json, *capture) : json.null();
}

void write_shop(JsonWriter& json, const DueShop& each, Day on) {
  json.begin_object();
  json.member("shop", each.shop.slug);
  json.member("due", to_string(each.due));
  json.key("days_ago");
  each.last ? json.value(days_between(each.last->on, on)) : json.null();
  capture_or_null(json, "last", each.last);
  capture_or_null(json, "whole", each.whole);
  json.end_object();
}

}  // namespace

ReportPage due_page(const DueList& list) {
  SourceList sources({}, {});
  ReportPage page;
  page.kind = "What is due";
  page.skip = "Skip to the list";
  page.title = "What is due on " + day_words(list.request.on);
  page.heading.words("What is due");
  page.under.day(list.request.on);
  page.dates.words("as of ").day(list.request.on);
  page.made = list.request.on;
  page.headlines = {headline(list)};
  if (!list.shops.empty()) {
    page.sections.push_back({"shops", "Shops to go back to", {}, {shops_table(list)}});
  }
  if (!list.picks.empty()) {
    page.sections.push_back({"picks", "Picks to look at again", {}, {picks_table(list, sources)}});
  }
  page.sections.push_back({"later", "The rest", {later_phrase(list)}, {}});
  page.sources = sources.take();
  page.cautions = report_cautions(false);
  return page;
}

std::string due_json(const DueList& list) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.due/1");
  json.line_break();
  json.member("on", to_string(list.request.on));
  json.member("every", list.request.every);
  json.member("ahead", list.request.ahead);
  json.line_break();
  json.key("shops");
  json.begin_array();
  for (const DueShop& each : list.shops) {
    json.line_break();
    write_shop(json, each, list.request.on);
  }
  json.end_array();
  json.line_break();
  json.key("picks");
  json.begin_array();
  for (const FollowedPick& each : list.picks) {
    json.line_break();
    write_pick(json, each);
  }
  json.end_array();
  json.line_break();
  json.member("shops_later", list.shops_later);
  json.member("picks_later", list.picks_later);
  json.member("picks_undated", list.picks_undated);
  write_day(json, "next", list.next);
  json.line_break();
  json.end_object();
  return json.take() + '\n';
}

std::string due_csv(const DueList& list) {
  CsvWriter csv;
  for (const char* column : {"what", "shop", "due", "last_capture", "days_ago", "scope", "pick",
                             "line_code", "name", "theme", "state"}) {
    csv.plain(column);
  }
  csv.end_row();
  for (const DueShop& each : list.shops) {
    csv.plain("shop");
    csv.plain(each.shop.slug);
    csv.plain(to_string(each.due));
    csv.plain(each.last ? to_string(each.last->on) : "");
    csv.plain(each.last ? std::to_string(days_between(each.last->on, list.request.on)) : "");
    csv.plain(each.last ? to_string(each.last->scope) : "");
    for (int empty = 0; empty < 5; ++empty) csv.plain("");
    csv.end_row();
  }
  for (const FollowedPick& each : list.picks) {
    csv.plain("pick");
    csv.plain(each.pick.shop);
    csv.plain(to_string(each.pick.review.value()));
    for (int empty = 0; empty < 3; ++empty) csv.plain("");
    csv.plain(std::to_string(each.pick.number));
    csv.text(each.code);
    csv.text(each.name);
    csv.text(each.pick.theme);
    csv.plain(to_string(each.state));
    csv.end_row();
  }
  return csv.take();
}

}  // namespace rangebook
