// The comparison as a page, and its rows.
#include "reports/order_report.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "reports/csv_writer.h"
#include "reports/json_facts.h"
#include "reports/json_writer.h"
#include "reports/wording.h"
#include "schema/shop_name.h"

namespace rangebook {
namespace {

constexpr std::string_view kNotStated = "not stated";

class Words {
 public:
  explicit Words(const Order& order) : order_(order) {}

  std::string money(MinorUnits amount) const { return money_words({amount, order_.currency}); }
  std::string money(const std::optional<MinorUnits>& amount) const {
    return amount ? money(*amount) : std::string(kNotStated);
  }

  std::string cost(const OrderQuote& quote) const {
    if (!quote.comparable) return "-";
    return quote.cost_to_try ? money(*quote.cost_to_try) : "at least " + money(quote.known_cost);
  }
  std::string delivery(const OrderQuote& quote) const {
    if (!quote.delivery) return quote.comparable ? std::string(kNotStated) : "-";
    const MinorUnits charged = quote.returns ? quote.returns->delivery_charged : 0;
    const MinorUnits back = quote.returns ? quote.returns->delivery_back : 0;
    std::string text = money(quote.delivery->fee);
    if (charged > 0) text += fmt::format(", {} after the return", money(charged));
    if (back > 0) text += ", refunded";
    return text;
  }
  std::string gap(const OrderQuote& quote) const {
    if (!quote.delivery || !quote.delivery->gap_to_free) return "-";
    return money(*quote.delivery->gap_to_free) + " more";
  }
  std::string way_back(const OrderQuote& quote) const {
    if (!quote.returns) return "-";
    const ReturnQuote& back = *quote.returns;
    if (!back.possible) return "nothing is taken back";
    std::string text = back.own_postage ? "own postage" : money(back.fee);
    if (back.own_postage && back.fee.value_or(0) > 0) text += " and " + money(back.fee);
    if (back.method) text += fmt::format(", {}", to_string(*back.method));
    return text;
  }
  static std::string last_day(const OrderQuote& quote) {
    if (!quote.returns) return "-";
    const ReturnDeadline& deadline = quote.returns->deadline;
    if (deadline.unlimited) return "no limit";
    return deadline.day ? day_words(*deadline.day) : std::string(kNotStated);
  }

 private:
  const Order& order_;
};

MinorUnits sum_of(const Order& order, bool back) {
  MinorUnits sum = 0;
  for (const OrderItem& item : order.items) sum += item.sent_back == back ? item.price : 0;
  return sum;
}

std::size_t count_of(const Order& order, bool back) {
  return static_cast<std::size_t>(
      std::count_if(order.items.begin(), order.items.end(),
                    [back](const OrderItem& item) { return item.sent_back == back; }));
}

Phrase order_phrase(const Order& order, const Words& words) {
  Phrase phrase;
  phrase.words("Kept: ").figure(counted(count_of(order, false), "piece", "pieces"));
  phrase.words(" for ").figure(words.money(sum_of(order, false)));
  phrase.words(". Sent back: ").figure(counted(count_of(order, true), "piece", "pieces"));
  phrase.words(" for ").figure(words.money(sum_of(order, true)));
  if (order.discount > 0) phrase.words(". Discount: ").figure(words.money(order.discount));
  if (order.parcels > 1) {
    phrase.words(". ").figure(
        counted(static_cast<std::size_t>(order.parcels), "parcel", "parcels"));
  }
  return phrase.words(". Bought on ").day(order.bought).words(".");
}

std::string_view shop_words(const OrderQuote& quote) {
  return shop_name(quote.shop_name, quote.shop);
}

void add_day(Phrase& phrase, const std::optional<Day>& on) {
  on ? phrase.day(*on) : phrase.words("never");
}

/// In words that may stand on two lines: as a figure the column would be the widest.
Phrase observed_phrase(const OrderQuote& quote) {
  Phrase phrase;
  const bool two = quote.delivery_observed != quote.returns_observed;
  if (two) phrase.words("delivery ");
  add_day(phrase, quote.delivery_observed);
  if (two) {
    phrase.words(", returns ");
    add_day(phrase, quote.returns_observed);
  }
  return phrase;
}

BriefTable cost_table(const OrderComparison& comparison, const Words& words) {
  BriefTable table;
  table.key = "shops";
  table.caption = "What trying this order costs, besides what is kept";
  table.columns = {{"shop", "Shop", false},           {"cost", "Cost to try", true},
                   {"delivery", "Delivery", false},   {"free", "To free delivery", false},
                   {"way_back", "Way back", false},   {"last_day", "Last day to return", false},
                   {"observed", "As captured", false}};
  for (const OrderQuote& quote : comparison.quotes) {
    table.rows.push_back({Phrase{}.name(shop_words(quote)), Phrase{}.figure(words.cost(quote)),
                          Phrase{}.figure(words.delivery(quote)), Phrase{}.figure(words.gap(quote)),
                          Phrase{}.figure(words.way_back(quote)),
                          Phrase{}.figure(Words::last_day(quote)), observed_phrase(quote)});
  }
  return table;
}

void add_sentence(BriefSection& section, const OrderQuote& quote, std::string_view sentence) {
  section.paragraphs.push_back(Phrase{}.label(shop_words(quote)).words(": ").name(sentence));
}

/// What a figure stands on and what it leaves open, shop by shop.
BriefSection reasons(const OrderComparison& comparison, const Words& words) {
  BriefSection section{"reasons", "Behind the figures", {}, {}};
  for (const OrderQuote& quote : comparison.quotes) {
    if (!quote.comparable) add_sentence(section, quote, quote.obstacle);
    if (quote.delivery) {
      add_sentence(
          section, quote,
          fmt::format("Delivery by \"{}\"{}.", quote.delivery->option,
                      quote.delivery->free_by_value ? ", free for an order of this value" : ""));
    }
    if (quote.returns) add_sentence(section, quote, quote.returns->deadline.reckoned);
    if (quote.returns && quote.returns->stays > 0) {
      add_sentence(section, quote,
                   fmt::format("Of what should go back, {} cannot be returned.",
                               words.money(quote.returns->stays)));
    }
    if (quote.returns && quote.returns->credited > 0) {
      add_sentence(section, quote,
                   fmt::format("{} comes back as credit or exchange, not as money.",
                               words.money(quote.returns->credited)));
    }
    for (const auto& note : quote.notes) add_sentence(section, quote, note);
    if (!quote.unknown.empty()) {
      add_sentence(
          section, quote,
          fmt::format("The terms in the book leave open: {}.", fmt::join(quote.unknown, "; ")));
    }
  }
  return section;
}

BriefSection checks(const OrderComparison& comparison) {
  BriefSection section{"check", "Check before you advise", {}, {}};
  for (const OrderQuote& quote : comparison.quotes) {
    for (const TermsCheck& check : quote.checks) {
      add_sentence(section, quote, fmt::format("{} Source: {}.", check.what, check.source));
    }
  }
  return section;
}

Headline headline(const OrderComparison& comparison, const Words& words) {
  const OrderQuote& first = comparison.quotes.front();
  Phrase sentence;
  if (first.comparable && first.cost_to_try) {
    sentence.words("Trying this order costs least at ").name(shop_words(first)).words(": ");
    sentence.figure(words.money(*first.cost_to_try)).words(".");
  } else {
    sentence.words("No shop's terms in the book say all that this order would cost.");
  }
  return {Theme::terms, std::move(sentence)};
}

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

ReportPage order_page(const OrderComparison& comparison) {
  const Words words(comparison.order);
  ReportPage page;
  page.kind = "Order to try";
  page.skip = "Skip to the costs";
  page.title = "What an order costs to get and to send back";
  page.heading.words("An order across ").figure(counted(comparison.quotes.size(), "shop", "shops"));
  page.under = order_phrase(comparison.order, words);
  page.dates.words("By the terms as captured on the days in the table");
  page.captured = page.dates;
  page.headlines = {headline(comparison, words)};
  BriefSection costs{"costs", "Shop by shop", {}, {}};
  costs.paragraphs.push_back(
      Phrase{}.words("Cost to try: delivery and the way back, less what the shop refunds of them. "
                     "\"At least\": a part is not stated, so the sum is not complete."));
  costs.tables.push_back(cost_table(comparison, words));
  page.sections.push_back(std::move(costs));
  for (BriefSection section : {reasons(comparison, words), checks(comparison)}) {
    if (!section.paragraphs.empty()) page.sections.push_back(std::move(section));
  }
  page.cautions = {
      "Terms as captured on the days shown; the shop may have changed them since.",
      "Statutory rights may be wider, such as the 14 days to withdraw from a purchase at a "
      "distance "
      "in the EU (Directive 2011/83/EU, art. 9). This is no legal advice: check local law and the "
      "shop."};
  return page;
}

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
