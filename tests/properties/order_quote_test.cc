// The comparison of orders against a second, naive calculation over random terms and orders: to the
// cent, with thresholds hit exactly.
#include <gtest/gtest.h>

#include <random>

#include "tracker/order_quote.h"

namespace rangebook {
namespace {

constexpr int kRounds = 4000;

Currency eur() { return Currency::from_code("EUR").value(); }

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : random_(seed) {}
  int at_most(int most) {
    return static_cast<int>(random_() % static_cast<std::uint64_t>(most + 1));
  }
  bool chance(int in_ten) { return at_most(9) < in_ten; }

 private:
  std::mt19937_64 random_;
};

Money euros(MinorUnits minor) { return {minor, eur()}; }

/// One option and one policy, all stated, so that the cost is known.
TermsInForce random_shop(Dice& dice) {
  TermsInForce shop;
  shop.shop = {.slug = "s", .name = "S", .country = "IE", .currency = eur()};
  DeliveryOption option;
  option.key = "standard";
  option.fee = euros(dice.at_most(900));
  if (dice.chance(6)) {
    option.free_over = Threshold{euros(100 * dice.at_most(80)), dice.chance(5)};
    option.threshold_kept = dice.chance(5);
    option.threshold_basis =
        dice.chance(5) ? ThresholdBasis::before_discount : ThresholdBasis::after_discount;
  }
  option.per_parcel = dice.chance(3);
  shop.terms.delivery.push_back(option);
  ReturnPolicy policy;
  policy.window = ReturnWindow{14 + dice.at_most(30), DayUnit::days, CountedFrom::purchase};
  policy.cost = dice.chance(5) ? ReturnCost{Payer::shop, {}}
                               : ReturnCost{Payer::customer, euros(dice.at_most(600))};
  policy.delivery_refunded = dice.chance(5);
  if (dice.chance(3)) policy.restocking_fee = euros(dice.at_most(500));
  if (dice.chance(3)) policy.restocking_share = 50 * dice.at_most(40);
  if (dice.chance(4)) policy.items[ReturnItem::sale] = ItemRule::not_returnable;
  if (dice.chance(4)) policy.items[ReturnItem::hats] = ItemRule::credit_only;
  shop.terms.returns.push_back(policy);
  return shop;
}

/// Prices in whole euros and cents that often add up to a threshold exactly.
Order random_order(Dice& dice) {
  Order order{eur(), {}, 0, 1 + dice.at_most(2), {}, {}, {}, {}, parse_day("2026-11-20").value(),
              {}};
  const int count = 1 + dice.at_most(5);
  MinorUnits total = 0;
  for (int i = 0; i < count; ++i) {
    OrderItem item;
    item.price = dice.chance(7) ? 100 * dice.at_most(40) : dice.at_most(9000);
    item.sent_back = dice.chance(5);
    if (dice.chance(3)) item.kind = dice.chance(5) ? ReturnItem::sale : ReturnItem::hats;
    total += item.price;
    order.items.push_back(item);
  }
  if (dice.chance(3)) order.discount = total * dice.at_most(50) / 100;
  return order;
}

/// Adds a piece that makes the order worth exactly what delivery is free from.
void hit_the_threshold(const TermsInForce& shop, Order& order) {
  const auto& limit = shop.terms.delivery.front().free_over;
  MinorUnits goods = 0;
  for (const auto& item : order.items) goods += item.price;
  if (!limit || goods >= limit->amount.minor) return;
  order.discount = 0;
  order.items.push_back({limit->amount.minor - goods, false, {}});
}

/// Cent by cent: each cent of the discount goes where the largest part is still owed.
std::vector<MinorUnits> naive_discounts(const Order& order) {
  std::vector<MinorUnits> given(order.items.size(), 0);
  MinorUnits total = 0;
  for (const auto& item : order.items) total += item.price;
  std::vector<MinorUnits> left(order.items.size(), 0);
  if (total == 0) return given;
  MinorUnits rest = order.discount;
  for (std::size_t i = 0; i < given.size(); ++i) {
    while ((given[i] + 1) * total <= order.discount * order.items[i].price) ++given[i];
    left[i] = order.discount * order.items[i].price - given[i] * total;
    rest -= given[i];
  }
  for (; rest > 0; --rest) {
    std::size_t most = 0;
    for (std::size_t i = 1; i < left.size(); ++i) {
      if (left[i] > left[most]) most = i;
    }
    ++given[most];
    left[most] = -1;
  }
  return given;
}

/// The bill written out as a shop assistant would.
MinorUnits naive_cost(const TermsInForce& shop, const Order& order) {
  const auto& option = shop.terms.delivery.front();
  const auto& policy = shop.terms.returns.front();
  const auto discounts = naive_discounts(order);
  const bool before = option.threshold_basis == ThresholdBasis::before_discount;
  MinorUnits ordered = 0;
  MinorUnits kept = 0;
  MinorUnits back = 0;
  bool anything_kept = false;
  bool anything_back = false;
  bool wants_back = false;
  for (std::size_t i = 0; i < order.items.size(); ++i) {
    const auto& item = order.items[i];
    const MinorUnits value = before ? item.price : item.price - discounts[i];
    ordered += value;
    const bool refused = item.kind && policy.items.contains(*item.kind) &&
                         policy.items.at(*item.kind) == ItemRule::not_returnable;
    wants_back = wants_back || item.sent_back;
    if (item.sent_back && !refused) {
      anything_back = true;
      back += item.price - discounts[i];
    } else {
      anything_kept = true;
      kept += value;
    }
  }
  const MinorUnits full = option.fee->minor * (*option.per_parcel ? order.parcels : 1);
  const auto fee_for = [&](MinorUnits value) -> MinorUnits {
    if (!option.free_over) return full;
    const MinorUnits limit = option.free_over->amount.minor;
    return value > limit || (option.free_over->inclusive && value == limit) ? 0 : full;
  };
  MinorUnits cost = fee_for(ordered);
  if (!wants_back || !anything_back) return cost;
  if (!anything_kept && *policy.delivery_refunded) {
    cost = 0;
  } else if (option.threshold_kept.value_or(false) && cost == 0) {
    cost = fee_for(kept);
  }
  if (policy.cost.paid_by == Payer::customer) cost += policy.cost.fee->minor;
  if (policy.restocking_fee) cost += policy.restocking_fee->minor;
  if (policy.restocking_share) {
    const MinorUnits exact = back * *policy.restocking_share;
    cost += exact / 10'000 + (exact % 10'000 >= 5'000 ? 1 : 0);
  }
  return cost;
}

TEST(OrderQuoteProperty, AgreesWithANaiveBillToTheCent) {
  Dice dice(20261125);
  int exact = 0;
  for (int round = 0; round < kRounds; ++round) {
    const auto shop = random_shop(dice);
    auto order = random_order(dice);
    if (dice.chance(3)) hit_the_threshold(shop, order);
    const auto quote = quote_order(shop, order, {});
    ASSERT_TRUE(quote.cost_to_try.has_value()) << round;
    ASSERT_EQ(*quote.cost_to_try, naive_cost(shop, order)) << "round " << round;
    const auto& option = shop.terms.delivery.front();
    exact += option.free_over && option.free_over->amount.minor == quote.goods ? 1 : 0;
  }
  EXPECT_GT(exact, 100);  // thresholds hit exactly are among them
}

TEST(OrderQuoteProperty, WhatIsOrderedIsKeptRefundedCreditedOrStays) {
  Dice dice(7);
  for (int round = 0; round < kRounds; ++round) {
    const auto shop = random_shop(dice);
    const auto order = random_order(dice);
    const auto quote = quote_order(shop, order, {});
    if (!quote.returns) continue;
    const auto discounts = naive_discounts(order);
    MinorUnits kept = 0;
    for (std::size_t i = 0; i < order.items.size(); ++i) {
      if (!order.items[i].sent_back) kept += order.items[i].price - discounts[i];
    }
    EXPECT_EQ(kept + quote.returns->refunded + quote.returns->credited + quote.returns->stays,
              quote.paid_for_goods);
  }
}

TEST(OrderQuoteProperty, TheGapToFreeIsTheLeastThatMakesItFree) {
  Dice dice(99);
  int seen = 0;
  for (int round = 0; round < kRounds; ++round) {
    const auto shop = random_shop(dice);
    auto order = random_order(dice);
    order.discount = 0;
    const auto quote = quote_order(shop, order, {});
    if (!quote.delivery->gap_to_free) continue;
    ++seen;
    auto more = order;
    more.items.push_back({*quote.delivery->gap_to_free, false, {}});
    EXPECT_EQ(quote_order(shop, more, {}).delivery->fee, 0);
    more.items.back().price -= 1;
    EXPECT_NE(quote_order(shop, more, {}).delivery->fee, 0);
  }
  EXPECT_GT(seen, 100);
}

}  // namespace
}  // namespace rangebook
