// The index for other programs: JSON and CSV.
#include "reports/csv_writer.h"
#include "reports/json_facts.h"
#include "reports/json_writer.h"
#include "reports/shop_index_report.h"
#include "reports/size_report_forms.h"
#include "reports/terms_words.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

void write_sizes(JsonWriter& json, const ShopEntry& entry) {
  json.key("sizes");
  json.begin_array();
  for (const SizeTable& table : entry.sizes.tables) {
    const SizeFact found = found_sizes(table);
    if (found.labels.empty()) continue;
    json.begin_object();
    json.member("system", to_string(table.system));
    json.member("fit", to_string(table.fit));
    json.member("min", found.min);
    json.member("max", found.max);
    json.member("lines", table.lines);
    json.end_object();
  }
  json.end_array();
}

void write_entry(JsonWriter& json, const ShopEntry& entry) {
  json.line_break();
  json.begin_object();
  json.member("shop", entry.shop.slug);
  json.member("name", entry.shop.name);
  json.member("captures", entry.captures);
  json.key("capture");
  entry.capture ? write_capture(json, *entry.capture) : json.null();
  json.member("lines", entry.sizes.lines);
  json.member("looked", entry.looked);
  json.member("partial", entry.sizes.partial);
  json.key("prices");
  json.begin_array();
  for (const PriceLadder& prices : entry.prices) write_ladder(json, prices);
  json.end_array();
  write_sizes(json, entry);
  json.member("stated", entry.stated ? entry.stated->words : "");
  json.member("palette", entry.palette.known > 0 ? to_string(lean_of(entry.palette)) : "");
  json.member("delivery", plain_text(delivery_words(entry.terms.terms), false));
  write_day(json, "delivery_observed", entry.terms.delivery_on);
  json.member("returns", plain_text(returns_words(entry.terms.terms), false));
  write_day(json, "returns_observed", entry.terms.returns_on);
  json.end_object();
}

void write_row(CsvWriter& csv, const ShopEntry& entry, const PriceLadder* prices) {
  const auto amount = [prices](MinorUnits PriceLadder::*which) {
    return prices ? decimal_text({prices->*which, prices->currency}) : "";
  };
  const auto day = [](const std::optional<Day>& on) { return on ? to_string(*on) : ""; };
  csv.text(entry.shop.slug);
  csv.text(entry.shop.name);
  csv.plain(std::to_string(entry.captures));
  csv.text(entry.capture ? entry.capture->season : "");
  csv.plain(entry.capture ? to_string(entry.capture->on) : "");
  csv.plain(std::to_string(entry.sizes.lines));
  csv.plain(entry.sizes.partial ? "yes" : "no");
  csv.plain(prices ? prices->currency.code() : "");
  csv.plain(prices ? std::to_string(prices->lines) : "");
  for (const auto which : {&PriceLadder::entry, &PriceLadder::lower_quartile, &PriceLadder::median,
                           &PriceLadder::upper_quartile, &PriceLadder::top}) {
    csv.plain(amount(which));
  }
  csv.text(plain_text(sizes_phrase(entry.sizes), false));
  csv.text(entry.stated ? entry.stated->words : "");
  csv.plain(entry.palette.known > 0 ? to_string(lean_of(entry.palette)) : "");
  csv.text(plain_text(delivery_words(entry.terms.terms), false));
  csv.plain(day(entry.terms.delivery_on));
  csv.text(plain_text(returns_words(entry.terms.terms), false));
  csv.plain(day(entry.terms.returns_on));
  csv.end_row();
}

}  // namespace

std::string shop_index_json(const ShopIndex& index) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.shop-index/1");
  json.member("category", index.category);
  json.key("shops");
  json.begin_array();
  for (const ShopEntry& entry : index.shops) write_entry(json, entry);
  json.line_break();
  json.end_array();
  json.end_object();
  return json.take() + "\n";
}

std::string shop_index_csv(const ShopIndex& index) {
  CsvWriter csv;
  for (const auto* column : {"shop",
                             "name",
                             "captures",
                             "season",
                             "date",
                             "lines",
                             "partial",
                             "currency",
                             "priced_lines",
                             "entry",
                             "lower_quartile",
                             "median",
                             "upper_quartile",
                             "top",
                             "sizes",
                             "sizes_stated",
                             "palette",
                             "delivery",
                             "delivery_observed",
                             "returns",
                             "returns_observed"}) {
    csv.plain(column);
  }
  csv.end_row();
  for (const ShopEntry& entry : index.shops) {
    if (entry.prices.empty()) write_row(csv, entry, nullptr);
    for (const PriceLadder& prices : entry.prices) write_row(csv, entry, &prices);
  }
  return csv.take();
}

}  // namespace rangebook
