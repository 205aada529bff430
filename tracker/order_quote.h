// What an order costs to get and to send back at a shop, by its terms.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "schema/order.h"
#include "schema/terms_version.h"

namespace rangebook {

/// The discount of an order by item, in proportion to the prices and adding up to the whole:
/// largest remainders first, then the earlier item.
std::vector<MinorUnits> apportion(MinorUnits discount, const std::vector<OrderItem>& items);

/// What `value` (an order value, in minor units of `currency`) costs by one option.
struct DeliveryFee {
  std::optional<MinorUnits> fee;  ///< nothing: `unknown` says why
  bool free_by_value = false;
  std::string unknown;
};
DeliveryFee delivery_fee(const DeliveryOption& option, const Order& order, MinorUnits value);

/// Order value by the option's own basis; not stated: what the customer pays.
MinorUnits order_value(const DeliveryOption& option, MinorUnits before_discount,
                       MinorUnits after_discount);

/// The option the order would come by; nothing where no option goes there or fits the wish.
const DeliveryOption* choose_delivery(const TermsInForce& shop, const Order& order);

/// The last day on which what was bought can go back.
ReturnDeadline return_deadline(const ReturnPolicy& policy, const Order& order,
                               const Holidays& holidays);

/// The part of the quote that concerns what is sent back, for a customer in `country`. `option` is
/// the one the order came by, or null. Adds to `quote`, whose delivery is known already.
void quote_return(const ReturnPolicy& policy, const DeliveryOption* option, const Order& order,
                  std::string_view country, const Holidays& holidays, OrderQuote& quote);

/// One shop. The order has at least one item, prices of 0 or more, and a discount of at most their
/// sum.
OrderQuote quote_order(const TermsInForce& shop, const Order& order, const Holidays& holidays);

/// All shops, in the order the comparison states.
OrderComparison compare_order(std::span<const TermsInForce> shops, const Order& order,
                              const Holidays& holidays);

}  // namespace rangebook
