// The comparison for other programs: JSON and CSV.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "reports/csv_writer.h"
#include "reports/json_facts.h"
#include "reports/json_writer.h"
#include "reports/order_report.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

void json_amount(JsonWriter& json, std::string_view key, const std::optional<MinorUnits>& amount) {
  json.key(key);
  amount ? json.value(*amount) : json.null();
}

void json_strings(JsonWriter& json, std::string_view key, const std::vector<std::string>& texts) {
  json.key(key);
  json.begin_array();
  for (const auto& text : texts) json.value(text);
  json.end_array();
}

void json_delivery(JsonWriter& json, const OrderQuote& quote) {
  json.key("delivery");
  if (!quote.delivery) return json.null();
  json.begin_object();
  json.member("option", quote.delivery->option);
  json_amount(json, "fee_minor", quote.delivery->fee);
  json.member("free_by_value", quote.delivery->free_by_value);
  json_amount(json, "gap_to_free_minor", quote.delivery->gap_to_free);
  json.end_object();
}

void json_returns(JsonWriter& json, const OrderQuote& quote) {
  json.key("returns");
  if (!quote.returns) return json.null();
  const ReturnQuote& back = *quote.returns;
  json.begin_object();
  json.member("possible", back.possible);
  json.key("method");
  back.method ? json.value(to_string(*back.method)) : json.null();
  json_amount(json, "fee_minor", back.fee);
  json.member("own_postage", back.own_postage);
  json.member("refunded_minor", back.refunded);
  json.member("credited_minor", back.credited);
  json.member("stays_minor", back.stays);
  json.member("delivery_back_minor", back.delivery_back);
  json.member("delivery_charged_minor", back.delivery_charged);
  write_day(json, "last_day", back.deadline.day);
  json.member("no_limit", back.deadline.unlimited);
  json.member("seasonal", back.deadline.seasonal);
  json.member("reckoned", back.deadline.reckoned);
  json.end_object();
}

void json_quote(JsonWriter& json, const OrderQuote& quote) {
  json.line_break();
  json.begin_object();
  json.member("shop", quote.shop);
  json.member("comparable", quote.comparable);
  json.member("obstacle", quote.obstacle);
  write_day(json, "delivery_observed", quote.delivery_observed);
  write_day(json, "returns_observed", quote.returns_observed);
  json.member("goods_minor", quote.goods);
  json.member("paid_for_goods_minor", quote.paid_for_goods);
  json_amount(json, "cost_to_try_minor", quote.cost_to_try);
  json.member("known_cost_minor", quote.known_cost);
  json_delivery(json, quote);
  json_returns(json, quote);
  json_strings(json, "unknown", quote.unknown);
  json_strings(json, "notes", quote.notes);
  json.key("checks");
  json.begin_array();
  for (const TermsCheck& check : quote.checks) {
    json.begin_object();
    json.member("what", check.what);
    json.member("source", check.source);
    json.end_object();
  }
  json.end_array();
  json.end_object();
}

std::string decimal(const std::optional<MinorUnits>& amount, Currency currency) {
  return amount ? decimal_text({*amount, currency}) : "";
}

/// One shop as a row.
class QuoteRow {
 public:
  QuoteRow(CsvWriter& csv, const OrderQuote& quote, Currency currency)
      : csv_(csv), quote_(quote), currency_(currency) {}

  void write() {
    csv_.text(quote_.shop);
    csv_.text(quote_.shop_name);
    csv_.plain(quote_.comparable ? "yes" : "no");
    csv_.text(quote_.obstacle);
    csv_.plain(currency_.code());
    amount(quote_.goods);
    amount(quote_.paid_for_goods);
    amount(quote_.cost_to_try);
    amount(quote_.known_cost);
    csv_.text(quote_.delivery ? quote_.delivery->option : "");
    amount(quote_.delivery ? quote_.delivery->fee : std::nullopt);
    amount(quote_.delivery ? quote_.delivery->gap_to_free : std::nullopt);
    write_return(quote_.returns.value_or(ReturnQuote{}), quote_.returns.has_value());
    day(quote_.delivery_observed);
    day(quote_.returns_observed);
    csv_.text(fmt::format("{}", fmt::join(quote_.unknown, "; ")));
    csv_.text(quote_.checks.empty() ? "" : quote_.checks.front().what);
    csv_.end_row();
  }

 private:
  void amount(const std::optional<MinorUnits>& value) { csv_.plain(decimal(value, currency_)); }
  void day(const std::optional<Day>& on) { csv_.plain(on ? to_string(*on) : ""); }
  void write_return(const ReturnQuote& back, bool any) {
    const auto stated = [any](MinorUnits value) {
      return any ? std::optional(value) : std::nullopt;
    };
    csv_.plain(back.method ? to_string(*back.method) : "");
    amount(back.fee);
    csv_.plain(!any ? "" : back.own_postage ? "yes" : "no");
    day(back.deadline.day);
    amount(stated(back.refunded));
    amount(stated(back.credited));
    amount(stated(back.stays));
  }

  CsvWriter& csv_;
  const OrderQuote& quote_;
  Currency currency_;
};

constexpr std::string_view kColumns[] = {"shop",
                                         "name",
                                         "comparable",
                                         "obstacle",
                                         "currency",
                                         "goods",
                                         "paid_for_goods",
                                         "cost_to_try",
                                         "known_cost",
                                         "delivery_option",
                                         "delivery_fee",
                                         "gap_to_free",
                                         "return_method",
                                         "return_fee",
                                         "own_postage",
                                         "last_day",
                                         "refunded",
                                         "credited",
                                         "stays",
                                         "delivery_observed",
                                         "returns_observed",
                                         "unknown",
                                         "check"};

}  // namespace

std::string order_csv(const OrderComparison& comparison) {
  CsvWriter csv;
  for (const auto column : kColumns) csv.plain(column);
  csv.end_row();
  for (const OrderQuote& quote : comparison.quotes) {
    QuoteRow(csv, quote, comparison.order.currency).write();
  }
  return csv.take();
}

std::string order_json(const OrderComparison& comparison) {
  const Order& order = comparison.order;
  JsonWriter json;
  json.begin_object();
  json.member("format", "rangebook.order/1");
  json.member("currency", order.currency.code());
  json.key("items");
  json.begin_array();
  for (const OrderItem& item : order.items) {
    json.begin_object();
    json.member("price_minor", item.price);
    json.member("sent_back", item.sent_back);
    json.key("kind");
    item.kind ? json.value(to_string(*item.kind)) : json.null();
    json.end_object();
  }
  json.end_array();
  json.member("discount_minor", order.discount);
  json.member("parcels", order.parcels);
  json.member("region", order.region);
  json.member("bought", to_string(order.bought));
  json.key("shops");
  json.begin_array();
  for (const OrderQuote& quote : comparison.quotes) json_quote(json, quote);
  json.line_break();
  json.end_array();
  json.end_object();
  return json.take() + "\n";
}

}  // namespace rangebook
