// Delivery of an order: which option, at what fee.
#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "tracker/order_quote.h"
#include "tracker/regions.h"

namespace rangebook {
namespace {

bool meets(const Threshold& threshold, MinorUnits value) {
  return threshold.inclusive ? value >= threshold.amount.minor : value > threshold.amount.minor;
}

/// True when the option states an amount in another currency than the order's.
bool foreign_money(const DeliveryOption& option, Currency currency) {
  const auto foreign = [currency](const Money& money) { return money.currency != currency; };
  if (option.fee && foreign(*option.fee)) return true;
  if (option.free_over && foreign(option.free_over->amount)) return true;
  if (option.minimum_order && foreign(option.minimum_order->amount)) return true;
  const auto any = [&foreign](const auto& steps) {
    return steps && std::any_of(steps->begin(), steps->end(),
                                [&foreign](const auto& step) { return foreign(step.fee); });
  };
  return any(option.fee_by_value) || any(option.fee_by_weight);
}

std::optional<MinorUnits> by_value(const std::vector<ValueStep>& steps, MinorUnits value) {
  std::optional<MinorUnits> fee;
  for (const ValueStep& step : steps) {
    if (step.from.minor <= value) fee = step.fee.minor;
  }
  return fee;
}

std::optional<MinorUnits> by_weight(const std::vector<WeightStep>& steps,
                                    std::optional<int> grams) {
  if (steps.empty()) return std::nullopt;
  const bool one_fee = std::all_of(steps.begin(), steps.end(), [&steps](const WeightStep& step) {
    return step.fee == steps.front().fee;
  });
  if (!grams) return one_fee ? std::optional(steps.front().fee.minor) : std::nullopt;
  for (const WeightStep& step : steps) {
    if (!step.grams || *grams <= *step.grams) return step.fee.minor;
  }
  return std::nullopt;
}

DeliveryFee not_known(std::string why) { return {std::nullopt, false, std::move(why)}; }

/// The fee before anything makes it free.
DeliveryFee plain_fee(const DeliveryOption& option, const Order& order, MinorUnits value) {
  if (option.fee_by_value) {
    if (const auto fee = by_value(*option.fee_by_value, value)) return {fee, false, {}};
  } else if (option.fee_by_weight) {
    if (const auto fee = by_weight(*option.fee_by_weight, order.grams)) return {fee, false, {}};
    return not_known(order.grams ? "the delivery fee for this weight"
                                 : "the delivery fee: it depends on the weight of the parcel");
  }
  if (option.fee) return {option.fee->minor, false, {}};
  return not_known("the delivery fee");
}

/// How closely an option fits the place the order goes to.
RegionFit place_fit(const DeliveryOption& option, const std::string& country, bool home) {
  if (option.not_regions && best_fit(*option.not_regions, country) != RegionFit::none) {
    return RegionFit::none;
  }
  if (option.regions && !option.regions->empty()) return best_fit(*option.regions, country);
  if (option.international.value_or(false)) return home ? RegionFit::none : RegionFit::world;
  return home ? RegionFit::group : RegionFit::none;
}

/// How well an option fits the wish; nothing: it does not.
std::optional<int> wish_fit(const DeliveryOption& option, DeliveryWish wish) {
  const bool collection = option.collection.value_or(false);
  const bool express = option.express.value_or(false);
  switch (wish) {
    case DeliveryWish::collection:
      return collection ? std::optional(0) : std::nullopt;
    case DeliveryWish::express:
      return express && !collection ? std::optional(0) : std::nullopt;
    case DeliveryWish::cheapest_home:
      break;
  }
  if (collection) return std::nullopt;
  return express ? 1 : 0;
}

}  // namespace

MinorUnits order_value(const DeliveryOption& option, MinorUnits before_discount,
                       MinorUnits after_discount) {
  const auto basis = option.threshold_basis.value_or(ThresholdBasis::after_discount);
  return basis == ThresholdBasis::before_discount ? before_discount : after_discount;
}

DeliveryFee delivery_fee(const DeliveryOption& option, const Order& order, MinorUnits value) {
  if (foreign_money(option, order.currency)) {
    return not_known(fmt::format("the delivery fee in {}", order.currency.code()));
  }
  const bool free = option.free_over && meets(*option.free_over, value);
  auto plain = plain_fee(option, order, value);
  if (free && plain.fee != MinorUnits{0}) return {MinorUnits{0}, true, {}};
  if (plain.fee && option.per_parcel.value_or(false)) *plain.fee *= order.parcels;
  return plain;
}

const DeliveryOption* choose_delivery(const TermsInForce& shop, const Order& order) {
  MinorUnits goods = 0;
  for (const OrderItem& item : order.items) goods += item.price;
  const bool home = order.region.empty() || order.region == shop.shop.country;
  const std::string& country = order.region.empty() ? shop.shop.country : order.region;
  using Rank = std::tuple<int, int, bool, MinorUnits, std::string_view>;
  const DeliveryOption* chosen = nullptr;
  Rank best;
  for (const DeliveryOption& option : shop.terms.delivery) {
    const auto place = place_fit(option, country, home);
    const auto wish = wish_fit(option, order.delivery);
    if (place == RegionFit::none || !wish) continue;
    const MinorUnits value = order_value(option, goods, goods - order.discount);
    if (option.minimum_order && option.minimum_order->amount.currency == order.currency &&
        !meets(*option.minimum_order, value)) {
      continue;
    }
    const auto fee = delivery_fee(option, order, value);
    const Rank rank{-static_cast<int>(place), *wish, !fee.fee.has_value(), fee.fee.value_or(0),
                    option.key};
    if (chosen == nullptr || rank < best) {
      chosen = &option;
      best = rank;
    }
  }
  return chosen;
}

}  // namespace rangebook
