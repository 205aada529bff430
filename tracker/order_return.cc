// Sending things back: the way, its cost, what comes back, by when.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "tracker/calendar.h"
#include "tracker/order_quote.h"
#include "tracker/regions.h"

namespace rangebook {
namespace {

/// What the way back costs by one method.
struct WayBack {
  std::optional<ReturnMethod> method;
  std::optional<MinorUnits> fee;
  bool own_postage = false;
  std::string unknown;
};

ReturnCost cost_of(const ReturnPolicy& policy, const ReturnMethodTerms* method) {
  if (method == nullptr) return policy.cost;
  ReturnCost cost = method->cost;
  if (!cost.paid_by && !cost.fee) return policy.cost;
  if (!cost.paid_by) cost.paid_by = policy.cost.paid_by;
  return cost;
}

WayBack way_back(const ReturnPolicy& policy, std::optional<ReturnMethod> method,
                 Currency currency) {
  const auto found = method ? policy.methods.find(*method) : policy.methods.end();
  const ReturnCost cost = cost_of(policy, found == policy.methods.end() ? nullptr : &found->second);
  WayBack way{method, std::nullopt, false, {}};
  if (cost.fee && cost.fee->currency != currency) {
    way.unknown = fmt::format("the fee for the way back in {}", currency.code());
  } else if (cost.fee) {
    way.fee = cost.fee->minor;
  } else if (cost.paid_by == Payer::shop) {
    way.fee = 0;
  } else if (cost.paid_by == Payer::customer) {
    way.own_postage = true;
    way.fee = 0;
    way.unknown = "the postage of the way back, which the customer pays";
  } else {
    way.unknown = "who pays the way back";
  }
  return way;
}

bool may_use(const ReturnMethodTerms& method) {
  return method.offered.value_or(method.cost.fee || method.cost.paid_by);
}

/// The asked method, else the cheapest that is offered, else what holds for all.
WayBack choose_way(const ReturnPolicy& policy, const Order& order) {
  if (order.method) return way_back(policy, order.method, order.currency);
  std::optional<WayBack> best;
  const auto rank = [](const WayBack& way) {
    return std::pair(!way.unknown.empty(), way.fee.value_or(0));
  };
  for (const auto& [method, terms] : policy.methods) {
    if (!may_use(terms)) continue;
    auto way = way_back(policy, method, order.currency);
    if (!best || rank(way) < rank(*best)) best = std::move(way);
  }
  return best ? *best : way_back(policy, std::nullopt, order.currency);
}

enum class Outcome : std::uint8_t { refunded, credited, stays };

bool money_refunded(const ReturnPolicy& policy) {
  return !policy.refund || std::find(policy.refund->begin(), policy.refund->end(),
                                     RefundForm::original_payment) != policy.refund->end();
}

Outcome outcome_of(const ReturnPolicy& policy, const OrderItem& item) {
  if (!policy.accepted.value_or(true)) return Outcome::stays;
  const auto rule = item.kind ? policy.items.find(*item.kind) : policy.items.end();
  if (rule != policy.items.end()) {
    switch (rule->second) {
      case ItemRule::not_returnable:
        return Outcome::stays;
      case ItemRule::exchange_only:
      case ItemRule::credit_only:
      case ItemRule::exchange_or_credit:
        return Outcome::credited;
      case ItemRule::returnable:
      case ItemRule::unopened_only:
        break;
    }
  }
  return money_refunded(policy) ? Outcome::refunded : Outcome::credited;
}

/// `share` in hundredths of a per cent, rounded half up.
MinorUnits share_of(MinorUnits amount, std::int32_t share) {
  constexpr MinorUnits kWhole = 10'000;
  return (amount * share + kWhole / 2) / kWhole;
}

/// Puts each thing that goes back where it ends up; gives the value of what is kept, after and
/// before the discount.
std::pair<MinorUnits, MinorUnits> sort_items(const ReturnPolicy& policy, const Order& order,
                                             ReturnQuote& result) {
  const auto discounts = apportion(order.discount, order.items);
  MinorUnits kept = 0;
  MinorUnits kept_before = 0;
  for (std::size_t i = 0; i < order.items.size(); ++i) {
    const OrderItem& item = order.items[i];
    const MinorUnits paid = item.price - discounts[i];
    const auto outcome = item.sent_back ? outcome_of(policy, item) : Outcome::stays;
    if (outcome == Outcome::refunded) result.refunded += paid;
    if (outcome == Outcome::credited) result.credited += paid;
    if (outcome != Outcome::stays) continue;
    if (item.sent_back) result.stays += paid;
    kept += paid;
    kept_before += item.price;
  }
  return {kept, kept_before};
}

bool all_goes_back(const Order& order, const ReturnQuote& result) {
  return result.stays == 0 && std::all_of(order.items.begin(), order.items.end(),
                                          [](const OrderItem& item) { return item.sent_back; });
}

bool none_goes_back(const ReturnPolicy& policy, const Order& order) {
  return std::none_of(order.items.begin(), order.items.end(), [&policy](const OrderItem& item) {
    return item.sent_back && outcome_of(policy, item) != Outcome::stays;
  });
}

/// What the return does to the delivery fee.
void settle_delivery(const ReturnPolicy& policy, const DeliveryOption* option, const Order& order,
                     std::pair<MinorUnits, MinorUnits> kept, OrderQuote& quote) {
  ReturnQuote& result = *quote.returns;
  if (option == nullptr || !quote.delivery || !quote.delivery->fee) return;
  const bool all = all_goes_back(order, result);
  if (all && policy.delivery_refunded.value_or(false)) {
    result.delivery_back = *quote.delivery->fee;
    return;
  }
  if (all && !policy.delivery_refunded && *quote.delivery->fee > 0) {
    quote.notes.push_back(
        "Everything goes back: the shop does not say whether it refunds the delivery fee; it is "
        "counted as not refunded.");
  }
  if (!quote.delivery->free_by_value || !option->threshold_kept.value_or(false)) return;
  const auto fee = delivery_fee(*option, order, order_value(*option, kept.second, kept.first));
  if (fee.fee) {
    result.delivery_charged = *fee.fee;
  } else {
    quote.unknown.push_back(fee.unknown);
  }
}

void check_statutory(const ReturnPolicy& policy, const DeliveryOption* option,
                     std::string_view country, OrderQuote& quote) {
  const auto law = statutory_window(country);
  if (!law) return;
  const auto add = [&](std::string what) {
    quote.checks.push_back({std::move(what), std::string(law->source)});
  };
  if (!policy.accepted.value_or(true)) {
    return add(
        "The shop says that it takes nothing back. Check whether that holds for orders from "
        "afar.");
  }
  if (!policy.window || !policy.window->count || policy.window->unit == DayUnit::months) return;
  constexpr int kWorkWeek = 5;
  constexpr int kWeek = 7;
  int days = *policy.window->count;
  if (policy.window->unit == DayUnit::working_days) days = days * kWeek / kWorkWeek;
  if (policy.window->from != CountedFrom::delivery) {
    days -= option && option->transit ? option->transit->max.value_or(0) : 0;
  }
  if (days >= law->days) return;
  add(
      fmt::format("The shop's own window can end before {} days from receipt are over. Check which "
                  "right goes further.",
                  law->days));
}

/// The day from which the window is counted, and how that is said.
struct Start {
  Day day;
  std::string words;
};

Start start_of(const ReturnWindow& window, const Order& order) {
  const std::string bought = "the day of purchase, " + to_string(order.bought);
  if (window.from == CountedFrom::purchase) return {order.bought, bought};
  if (window.from == CountedFrom::delivery && order.delivered) {
    return {*order.delivered, "the day of delivery, " + to_string(*order.delivered)};
  }
  const std::string_view event = !window.from ? "an event the shop does not name"
                                 : window.from == CountedFrom::dispatch
                                     ? "dispatch, whose day is not known"
                                     : "delivery, whose day is not known";
  return {order.bought,
          fmt::format("{} (the shop counts from {}; this is the safe side)", bought, event)};
}

/// The latest day that a seasonal window grants; nothing where none covers the purchase.
std::optional<Day> seasonal_day(const ReturnPolicy& policy, const Order& order, Day start,
                                const Holidays& holidays) {
  std::optional<Day> latest;
  if (!policy.seasons) return latest;
  for (const SeasonalWindow& season : *policy.seasons) {
    if (!within_season(order.bought, season.from, season.to)) continue;
    const Day day = season.until
                        ? on_or_after(*season.until, order.bought)
                        : add_time(start, season.days.value_or(0), DayUnit::days, holidays);
    latest = latest ? std::max(*latest, day) : day;
  }
  return latest;
}

}  // namespace

ReturnDeadline return_deadline(const ReturnPolicy& policy, const Order& order,
                               const Holidays& holidays) {
  ReturnDeadline deadline;
  if (!policy.accepted.value_or(true)) {
    deadline.reckoned = "The shop takes nothing back, faults aside.";
    return deadline;
  }
  const Start start =
      policy.window ? start_of(*policy.window, order) : Start{order.bought, "the day of purchase"};
  if (policy.window && !policy.window->count) {
    deadline.unlimited = true;
    deadline.reckoned = "The shop sets no limit.";
    return deadline;
  }
  if (policy.window) {
    deadline.day = add_time(start.day, *policy.window->count, policy.window->unit, holidays);
    deadline.reckoned = fmt::format("{} {}, counted from {}.", *policy.window->count,
                                    to_string(policy.window->unit), start.words);
  }
  const auto seasonal = seasonal_day(policy, order, start.day, holidays);
  if (seasonal && (!deadline.day || *seasonal > *deadline.day)) {
    deadline.day = seasonal;
    deadline.seasonal = true;
    deadline.reckoned = "A seasonal window of the shop covers the day of purchase.";
  }
  if (!deadline.day) deadline.reckoned = "The shop does not say how long.";
  return deadline;
}

void quote_return(const ReturnPolicy& policy, const DeliveryOption* option, const Order& order,
                  std::string_view country, const Holidays& holidays, OrderQuote& quote) {
  ReturnQuote& result = quote.returns.emplace();
  result.possible = policy.accepted.value_or(true);
  const auto kept = sort_items(policy, order, result);
  result.deadline = return_deadline(policy, order, holidays);
  if (!result.deadline.day && !result.deadline.unlimited && result.possible) {
    quote.unknown.emplace_back("how long things can go back");
  }
  check_statutory(policy, option, country, quote);
  if (none_goes_back(policy, order)) {
    result.fee = 0;
    return;
  }
  if (order.method) {
    const auto asked = policy.methods.find(*order.method);
    if (asked != policy.methods.end() && asked->second.offered == false) {
      quote.comparable = false;
      quote.obstacle =
          fmt::format("The shop does not take returns by {}.", to_string(*order.method));
      return;
    }
    if (asked == policy.methods.end()) {
      quote.notes.push_back(
          fmt::format("The terms do not speak of returns by {}.", to_string(*order.method)));
    }
  }
  const WayBack way = choose_way(policy, order);
  result.method = way.method;
  result.own_postage = way.own_postage;
  result.fee = way.fee;
  if (!way.unknown.empty()) quote.unknown.push_back(way.unknown);
  if (policy.restocking_fee && policy.restocking_fee->currency != order.currency) {
    quote.unknown.push_back(fmt::format("the restocking fee in {}", order.currency.code()));
  } else if (policy.restocking_fee && result.fee) {
    *result.fee += policy.restocking_fee->minor;
  }
  if (policy.restocking_share && result.fee) {
    *result.fee += share_of(result.refunded + result.credited, *policy.restocking_share);
  }
  settle_delivery(policy, option, order, kept, quote);
}

}  // namespace rangebook
