// An order to try at home, and what it would cost at one shop: delivery, the way back, what stays
// unknown. Worked out from terms as observed on a date; never a promise of the shop.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/day.h"
#include "schema/money.h"
#include "schema/terms.h"

namespace rangebook {

/// An order may be worth at most this, in minor units; a larger one is a slip of typing.
inline constexpr MinorUnits kMaxOrderValue = 1'000'000'000;

/// One thing of an order.
struct OrderItem {
  MinorUnits price = 0;            ///< of one piece, in the order's currency
  bool sent_back = false;          ///< tried on and returned
  std::optional<ReturnItem> kind;  ///< where the shop's rules may differ: `sale`, `swimwear`

  bool operator==(const OrderItem&) const = default;
};

/// How the order should come.
enum class DeliveryWish : std::uint8_t { cheapest_home, express, collection };

struct Order {
  Currency currency;
  std::vector<OrderItem> items;
  MinorUnits discount = 0;  ///< a code on the whole order, taken off the items in proportion
  int parcels = 1;          ///< at least 1
  std::optional<int> grams;
  std::string region;  ///< ISO 3166-1 alpha-2 of the customer; empty: the shop's own
  std::optional<ReturnMethod> method;  ///< nothing: the cheapest the shop offers
  DeliveryWish delivery = DeliveryWish::cheapest_home;
  Day bought{};
  std::optional<Day> delivered;  ///< where it is known

  bool operator==(const Order&) const = default;
};

/// Public holidays and other days on which nobody works, besides Saturdays and Sundays.
struct Holidays {
  std::vector<Day> days;  ///< sorted, each once

  bool operator==(const Holidays&) const = default;
};

/// The delivery a quote reckons with.
struct DeliveryQuote {
  std::string option;             ///< the shop's name for it, or its key
  std::optional<MinorUnits> fee;  ///< for the whole order; nothing: the terms do not say
  bool free_by_value = false;     ///< the fee fell away because of the order value
  /// How much more would make it free; nothing where it is free, or never is.
  std::optional<MinorUnits> gap_to_free;

  bool operator==(const DeliveryQuote&) const = default;
};

/// The last day to return.
struct ReturnDeadline {
  std::optional<Day> day;  ///< nothing: no limit, or the terms do not say
  bool unlimited = false;  ///< the shop sets no limit
  bool seasonal = false;   ///< a seasonal window made it later
  std::string reckoned;    ///< a sentence: from which day, by which rule
  bool operator==(const ReturnDeadline&) const = default;
};

struct ReturnQuote {
  bool possible = true;                ///< no: the shop takes nothing back unless faulty
  std::optional<ReturnMethod> method;  ///< nothing: the terms name none
  std::optional<MinorUnits> fee;  ///< the way back and restocking; nothing: the terms do not say
  bool own_postage = false;       ///< the customer pays a carrier of her choice on top
  MinorUnits refunded = 0;        ///< prices that come back as money
  MinorUnits credited = 0;        ///< prices that come back as credit or exchange only
  MinorUnits stays = 0;           ///< prices of things meant to go back that cannot
  MinorUnits delivery_back = 0;   ///< of the delivery fee, where the shop refunds it
  /// Delivery charged after all, because what is kept is worth less than the free threshold.
  MinorUnits delivery_charged = 0;
  ReturnDeadline deadline;

  bool operator==(const ReturnQuote&) const = default;
};

/// A point that has to be checked, with its source; never a verdict.
struct TermsCheck {
  std::string what;
  std::string source;

  bool operator==(const TermsCheck&) const = default;
};

/// What an order would cost at one shop.
struct OrderQuote {
  std::string shop;
  std::string shop_name;
  std::optional<Day> delivery_observed;
  std::optional<Day> returns_observed;
  bool comparable = true;         ///< no: another currency, or no delivery to the region
  std::string obstacle;           ///< why not, one sentence
  MinorUnits goods = 0;           ///< items before the discount
  MinorUnits paid_for_goods = 0;  ///< after it
  std::optional<DeliveryQuote> delivery;
  std::optional<ReturnQuote> returns;  ///< nothing: nothing is sent back
  /// Delivery and the way back: what trying costs besides what is kept. Nothing where a part of it
  /// is not stated.
  std::optional<MinorUnits> cost_to_try;
  /// Sum of the parts that are stated: `cost_to_try` is at least this.
  MinorUnits known_cost = 0;
  std::vector<std::string> unknown;  ///< what the terms leave open, in words
  std::vector<std::string> notes;    ///< readings that were needed, one sentence each
  std::vector<TermsCheck> checks;

  bool operator==(const OrderQuote&) const = default;
};

/// The quotes of all shops for one order.
struct OrderComparison {
  Order order;
  std::vector<OrderQuote> quotes;  ///< cheapest to try first; then those with parts unknown by what
                                   ///< is known; then those that cannot be compared; ties by slug
  bool operator==(const OrderComparison&) const = default;
};

}  // namespace rangebook
