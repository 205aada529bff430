// The amounts of money that a page shows, each with what it seems to be: a price, a former price,
// or something else that costs money.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "importers/page_money.h"
#include "importers/page_view.h"

namespace rangebook {

/// What an amount on a page seems to be. `other` is no price of the thing: delivery, instalments,
/// members, savings, several together, a number in running text.
enum class AmountRole : std::uint8_t { plain, sale, weak_old, old, other };

/// One amount where it stands.
struct ShownAmount {
  HtmlId element = 0;  ///< the smallest that holds all of it
  AmountRole role = AmountRole::plain;
  std::string text;
  std::string currency;
  std::int64_t amount = 0;
  bool lower_bound = false;  ///< `from 49 EUR`, or one end of a range
};

/// All amounts that are shown on the page, in order, those aside of the product left out. A number
/// with two decimals but no sign of currency counts where its element is called price.
std::vector<ShownAmount> shown_amounts(const PageView& view);

}  // namespace rangebook
