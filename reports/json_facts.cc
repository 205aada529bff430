// Shared JSON shapes, key by key in the order of schema/FORMAT.md.
#include "reports/json_facts.h"

#include "reports/category_figures.h"
#include "reports/changes_json.h"

namespace rangebook {
namespace {

void write_sighting(JsonWriter& json, const Sighting& seen) {
  json.begin_object();
  json.member("capture", seen.capture);
  json.member("season", seen.season);
  json.member("date", to_string(seen.on));
  json.member("document", seen.document);
  json.key("line");
  if (seen.line) {
    json.value(*seen.line);
  } else {
    json.null();
  }
  json.end_object();
}

void write_list(JsonWriter& json, std::string_view name, const std::vector<std::string>& list) {
  if (list.empty()) return;
  json.key(name);
  json.begin_array();
  for (const std::string& each : list) json.value(each);
  json.end_array();
}

void write_marked(JsonWriter& json, const PriceFact& marked) {
  json.begin_object();
  json.member("amount_minor", marked.amount.minor);
  json.member("currency", marked.amount.currency.code());
  if (marked.full) json.member("full_amount_minor", marked.full->minor);
  write_list(json, "colours", marked.colours);
  write_list(json, "sizes", marked.sizes);
  json.end_object();
}

void write_finding(JsonWriter& json, const WasPriceFinding& finding) {
  json.begin_object();
  json.key("line");
  json.begin_object();
  json.member("id", finding.line.id);
  json.member("code", finding.line.code);
  json.member("name", finding.line.name);
  json.member("category", finding.line.category);
  json.end_object();
  json.key("marked");
  write_marked(json, finding.marked);
  json.key("marked_at");
  write_sighting(json, finding.marked_at);
  json.member("marked_since", to_string(finding.marked_since));
  json.member("lowest_minor", finding.lowest.minor);
  json.member("lowest_was_marked_down", finding.lowest_was_marked_down);
  json.key("lowest_at");
  write_sighting(json, finding.lowest_at);
  json.end_object();
}

}  // namespace

void write_day(JsonWriter& json, std::string_view key, const std::optional<Day>& day) {
  json.key(key);
  day ? json.value(to_string(*day)) : json.null();
}

void write_capture(JsonWriter& json, const CaptureInfo& capture) {
  json.begin_object();
  json.member("id", capture.id);
  json.member("season", capture.season);
  json.member("date", to_string(capture.on));
  json.member("scope", to_string(capture.scope));
  json.end_object();
}

void write_interval(JsonWriter& json, const ShareInterval& interval) {
  json.begin_array();
  json.value(index_text(interval.low));
  json.value(index_text(interval.high));
  json.end_array();
}

void write_was_prices(JsonWriter& json, const ChangeSet& set, std::string_view category) {
  if (!set.was_prices) return json.null();
  const WasPriceCheck& check = *set.was_prices;
  json.begin_object();
  json.member("days", kWasPriceDays);
  json.member("marked_down", check.marked_down);
  json.member("lower", check.lower);
  json.member("not_lower", check.not_lower);
  json.member("not_checked", check.not_checked);
  json.key("findings");
  json.begin_array();
  for (const WasPriceFinding* finding : findings_of(set, category)) {
    json.line_break();
    write_finding(json, *finding);
  }
  json.end_array();
  json.end_object();
}

void write_ladder(JsonWriter& json, const PriceLadder& prices) {
  json.begin_object();
  json.member("currency", prices.currency.code());
  json.member("lines", prices.lines);
  json.member("entry_minor", prices.entry);
  json.member("lower_quartile_minor", prices.lower_quartile);
  json.member("median_minor", prices.median);
  json.member("upper_quartile_minor", prices.upper_quartile);
  json.member("top_minor", prices.top);
  json.member("marked_down", prices.marked_down);
  json.key("median_depth_per_mille");
  if (prices.median_depth) {
    json.value(*prices.median_depth);
  } else {
    json.null();
  }
  json.end_object();
}

}  // namespace rangebook
