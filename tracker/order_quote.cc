// An order at one shop, and at all of them.
#include "tracker/order_quote.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <tuple>

#include "tracker/regions.h"

namespace rangebook {
namespace {

MinorUnits goods_of(const Order& order) {
  MinorUnits goods = 0;
  for (const OrderItem& item : order.items) goods += item.price;
  return goods;
}

std::optional<MinorUnits> gap_to_free(const DeliveryOption& option, const Order& order,
                                      MinorUnits goods) {
  if (!option.free_over || option.free_over->amount.currency != order.currency) return std::nullopt;
  const MinorUnits value = order_value(option, goods, goods - order.discount);
  const MinorUnits target = option.free_over->amount.minor + (option.free_over->inclusive ? 0 : 1);
  return value < target ? std::optional(target - value) : std::nullopt;
}

void note_readings(const DeliveryOption& option, const Order& order, MinorUnits goods,
                   OrderQuote& quote) {
  if (order.discount > 0 && option.free_over && !option.threshold_basis) {
    const auto before = delivery_fee(option, order, goods);
    const auto after = delivery_fee(option, order, goods - order.discount);
    if (before.fee != after.fee) {
      quote.notes.emplace_back(
          "Before the discount the order would go free. The shop does not say which value counts; "
          "the one after the discount is used.");
    }
  }
  if (order.parcels > 1 && option.fee && option.fee->minor > 0 && !option.per_parcel) {
    quote.notes.emplace_back(
        "The shop does not say whether the fee is for each parcel; it is counted once.");
  }
}

void quote_delivery(const TermsInForce& shop, const DeliveryOption* option, const Order& order,
                    OrderQuote& quote) {
  if (option == nullptr) {
    if (shop.terms.delivery.empty()) {
      quote.unknown.emplace_back("the delivery fee: no delivery terms are in the book");
      return;
    }
    quote.comparable = false;
    quote.obstacle = "No delivery option of the terms fits this order and place.";
    return;
  }
  const MinorUnits value = order_value(*option, quote.goods, quote.paid_for_goods);
  const auto fee = delivery_fee(*option, order, value);
  DeliveryQuote& delivery = quote.delivery.emplace();
  delivery.option = option->name.value_or(option->key);
  delivery.fee = fee.fee;
  delivery.free_by_value = fee.free_by_value;
  if (fee.fee != MinorUnits{0}) delivery.gap_to_free = gap_to_free(*option, order, quote.goods);
  if (!fee.fee) quote.unknown.push_back(fee.unknown);
  note_readings(*option, order, quote.goods, quote);
}

/// Sums up what is known.
void add_up(OrderQuote& quote) {
  if (quote.delivery) quote.known_cost += quote.delivery->fee.value_or(0);
  if (quote.returns) {
    const ReturnQuote& back = *quote.returns;
    quote.known_cost += back.fee.value_or(0) + back.delivery_charged - back.delivery_back;
  }
  if (quote.comparable && quote.unknown.empty()) quote.cost_to_try = quote.known_cost;
}

bool sends_back(const Order& order) {
  return std::any_of(order.items.begin(), order.items.end(),
                     [](const OrderItem& item) { return item.sent_back; });
}

}  // namespace

std::vector<MinorUnits> apportion(MinorUnits discount, const std::vector<OrderItem>& items) {
  std::vector<MinorUnits> parts(items.size());
  MinorUnits total = 0;
  for (const OrderItem& item : items) total += item.price;
  if (total == 0 || discount == 0) return parts;
  std::vector<MinorUnits> rests(items.size());
  MinorUnits left = discount;
  for (std::size_t i = 0; i < items.size(); ++i) {
    parts[i] = discount * items[i].price / total;
    rests[i] = discount * items[i].price % total;
    left -= parts[i];
  }
  std::vector<std::size_t> order(items.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&rests](std::size_t a, std::size_t b) { return rests[a] > rests[b]; });
  for (std::size_t i = 0; left > 0; ++i, --left) ++parts[order[i]];
  return parts;
}

OrderQuote quote_order(const TermsInForce& shop, const Order& order, const Holidays& holidays) {
  OrderQuote quote;
  quote.shop = shop.shop.slug;
  quote.shop_name = shop.shop.name;
  quote.delivery_observed = shop.delivery_on;
  quote.returns_observed = shop.returns_on;
  quote.goods = goods_of(order);
  quote.paid_for_goods = quote.goods - order.discount;
  if (shop.shop.currency && *shop.shop.currency != order.currency) {
    quote.comparable = false;
    quote.obstacle = fmt::format("The shop prices in {}, the order is in {}. Nothing is converted.",
                                 shop.shop.currency->code(), order.currency.code());
    return quote;
  }
  const DeliveryOption* option = choose_delivery(shop, order);
  quote_delivery(shop, option, order, quote);
  if (sends_back(order) && quote.comparable) {
    const std::string& country = order.region.empty() ? shop.shop.country : order.region;
    if (const ReturnPolicy* policy = policy_for(shop.terms, country)) {
      quote_return(*policy, option, order, country, holidays, quote);
    } else {
      quote.unknown.emplace_back("the way back: no return terms are in the book");
    }
  }
  add_up(quote);
  return quote;
}

OrderComparison compare_order(std::span<const TermsInForce> shops, const Order& order,
                              const Holidays& holidays) {
  OrderComparison comparison{order, {}};
  for (const TermsInForce& shop : shops) {
    comparison.quotes.push_back(quote_order(shop, order, holidays));
  }
  const auto rank = [](const OrderQuote& quote) {
    return std::tuple(!quote.comparable, !quote.cost_to_try.has_value(), quote.known_cost,
                      std::string_view(quote.shop));
  };
  std::sort(comparison.quotes.begin(), comparison.quotes.end(),
            [&rank](const OrderQuote& a, const OrderQuote& b) { return rank(a) < rank(b); });
  return comparison;
}

}  // namespace rangebook
