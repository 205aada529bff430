// Picks for other programs and for spreadsheets.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "reports/changes_json.h"
#include "reports/csv_writer.h"
#include "reports/json_facts.h"
#include "reports/pick_report.h"
#include "reports/pick_words.h"
#include "reports/seen_line.h"

namespace rangebook {
namespace {

void write_words(JsonWriter& json, const Pick& pick) {
  json.key("words");
  json.begin_array();
  for (const PickWord& word : pick.words) {
    json.begin_object();
    json.member("list", to_string(word.list));
    json.member("word", word.word);
    json.end_object();
  }
  json.end_array();
}

void write_sold_out(JsonWriter& json, const std::vector<SoldOutSize>& sizes) {
  json.key("sold_out");
  json.begin_array();
  for (const SoldOutSize& each : sizes) {
    json.begin_object();
    json.member("size", each.size);
    write_strings(json, "colours", each.colours);
    json.end_object();
  }
  json.end_array();
}

void write_seen(JsonWriter& json, std::string_view key, const std::optional<SeenLine>& line) {
  json.key(key);
  line ? write_seen_line(json, *line) : json.null();
}

void write_capture_or_null(JsonWriter& json, std::string_view key,
                           const std::optional<CaptureInfo>& capture) {
  json.key(key);
  capture ? write_capture(json, *capture) : json.null();
}

void csv_line(CsvWriter& csv, const std::optional<SeenLine>& line) {
  const auto amount = [&](const std::optional<PriceSpan> SeenLine::*span, Money PriceSpan::*end) {
    const bool stated = line && ((*line).*span).has_value();
    csv.plain(stated ? decimal_text((*((*line).*span)).*end) : "");
  };
  csv.plain(line ? to_string(line->seen.on) : "");
  amount(&SeenLine::price, &PriceSpan::low);
  amount(&SeenLine::price, &PriceSpan::high);
  amount(&SeenLine::full_price, &PriceSpan::low);
  amount(&SeenLine::full_price, &PriceSpan::high);
  csv.plain(line && line->price ? line->price->low.currency.code() : "");
  csv.text(line ? line->seen.document : "");
  csv.plain(line && line->seen.line ? std::to_string(*line->seen.line) : "");
}

std::string change_names(const FollowedPick& followed) {
  std::string names;
  for (const Change& change : followed.changes) {
    names += names.empty() ? "" : "|";
    names += to_string(change.kind);
  }
  return names;
}

void csv_row(CsvWriter& csv, const FollowedPick& each) {
  const Pick& pick = each.pick;
  csv.plain(std::to_string(pick.number));
  csv.plain(pick.shop);
  csv.text(each.code);
  csv.text(each.name);
  csv.plain(each.reference);
  csv.plain(to_string(pick.on));
  csv.text(pick.theme);
  csv.plain(pick.review ? to_string(*pick.review) : "");
  for (const PickList list : {PickList::personality, PickList::palette, PickList::dress_code,
                              PickList::body_shape, PickList::caution}) {
    csv.text(chosen_words(pick, list));
  }
  csv.text(pick.note);
  csv.plain(to_string(each.state));
  csv.plain(each.by ? to_string(each.by->on) : "");
  csv_line(csv, each.then);
  csv_line(csv, each.now);
  csv.text(sold_out_words(each.sold_out));
  csv.plain(each.was_away ? "yes" : "no");
  csv.text(fmt::format("{}", fmt::join(each.new_colours, "|")));
  csv.plain(change_names(each));
  csv.end_row();
}

constexpr std::string_view kColumns[] = {
    "number",         "shop",          "line_code",     "name",          "reference",
    "picked",         "theme",         "review",        "personality",   "palette",
    "dress_code",     "body_shape",    "caution",       "note",          "state",
    "looked_on",      "date_then",     "low_then",      "high_then",     "full_low_then",
    "full_high_then", "currency_then", "document_then", "row_then",      "date_now",
    "low_now",        "high_now",      "full_low_now",  "full_high_now", "currency_now",
    "document_now",   "row_now",       "sold_out",      "was_away",      "new_colours",
    "changes"};

}  // namespace

void write_pick(JsonWriter& json, const FollowedPick& each) {
  json.begin_object();
  json.member("number", each.pick.number);
  json.member("shop", each.pick.shop);
  json.member("code", each.code);
  json.member("name", each.name);
  json.member("reference", each.reference);
  json.member("picked", to_string(each.pick.on));
  json.member("picked_from", to_string(each.pick.seen_on));
  json.member("theme", each.pick.theme);
  write_day(json, "review", each.pick.review);
  json.member("note", each.pick.note);
  write_words(json, each.pick);
  json.member("state", to_string(each.state));
  write_capture_or_null(json, "looked", each.by);
  write_capture_or_null(json, "latest", each.latest);
  write_seen(json, "then", each.then);
  write_seen(json, "now", each.now);
  json.member("was_away", each.was_away);
  write_sold_out(json, each.sold_out);
  write_strings(json, "new_colours", each.new_colours);
  json.key("changes");
  json.begin_array();
  for (const Change& change : each.changes) {
    json.line_break();
    json.written(change_json(change));
  }
  json.end_array();
  json.end_object();
}

std::string picks_json(const PickSheet& sheet) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.picks/1");
  json.line_break();
  json.member("shop", sheet.shop);
  json.member("theme", sheet.theme);
  json.line_break();
  json.key("picks");
  json.begin_array();
  for (const FollowedPick& each : sheet.picks) {
    json.line_break();
    write_pick(json, each);
  }
  json.end_array();
  json.line_break();
  json.end_object();
  return json.take() + '\n';
}

std::string picks_csv(const PickSheet& sheet) {
  CsvWriter csv;
  for (const auto column : kColumns) csv.plain(column);
  csv.end_row();
  for (const FollowedPick& each : sheet.picks) csv_row(csv, each);
  return csv.take();
}

}  // namespace rangebook
