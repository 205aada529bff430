// The comparison as a page.
#include "reports/order_report.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <optional>

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

/// The costs side by side, where two shops can be compared.
std::optional<Chart> cost_chart(const OrderComparison& comparison, const Words& words) {
  CostsChart chart{comparison.order.currency, {}};
  std::size_t sure = 0;
  for (const OrderQuote& quote : comparison.quotes) {
    if (!quote.comparable) continue;
    const MinorUnits back = quote.returns ? quote.returns->fee.value_or(0) : 0;
    chart.rows.push_back({std::string(shop_words(quote)), quote.known_cost - back, back,
                          quote.cost_to_try.has_value()});
    sure += quote.cost_to_try ? 1U : 0U;
  }
  if (chart.rows.size() < 2) return {};
  Phrase finding;
  if (sure < 2) {
    finding.words("The costs that are stated; ")
        .figure(counted(sure, "shop states", "shops state"));
    return Chart{std::move(finding.words(" all of them.")), std::move(chart)};
  }
  const OrderQuote& least = comparison.quotes.front();
  const OrderQuote& most = comparison.quotes[sure - 1];
  finding.words("From ").figure(words.money(least.cost_to_try)).words(" at ");
  finding.name(shop_words(least)).words(" to ").figure(words.money(most.cost_to_try));
  finding.words(" at ").name(shop_words(most)).words(".");
  return Chart{std::move(finding), std::move(chart)};
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
  page.made = comparison.order.bought;
  page.headlines = {headline(comparison, words)};
  BriefSection costs{"costs", "Shop by shop", {}, {}};
  costs.paragraphs.push_back(
      Phrase{}.words("Cost to try: delivery and the way back, less what the shop refunds of them. "
                     "\"At least\": a part is not stated, so the sum is not complete."));
  costs.tables.push_back(cost_table(comparison, words));
  if (auto chart = cost_chart(comparison, words)) {
    costs.tables.back().charts.push_back(std::move(*chart));
  }
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

}  // namespace rangebook
