// Quartiles of the prices of a category.
#include "tracker/price_ladder.h"

#include <algorithm>
#include <limits>

#include "tracker/line_prices.h"

namespace rangebook {

// Position (n - 1) * quarter / 4: `rank` whole steps and `fourths` of the next. Prices are not
// negative, so adding 2 before dividing by 4 rounds half up.
MinorUnits quartile(std::span<const MinorUnits> ascending, unsigned quarter) {
  const std::size_t position = (ascending.size() - 1) * quarter;
  const std::size_t rank = position / 4;
  const auto fourths = static_cast<MinorUnits>(position % 4);
  if (fourths == 0) return ascending[rank];
  return ascending[rank] + ((ascending[rank + 1] - ascending[rank]) * fourths + 2) / 4;
}

std::optional<std::uint32_t> markdown_depth(const LineOffers& offers) {
  constexpr MinorUnits kWhole = 1000;
  constexpr MinorUnits kLargest = std::numeric_limits<MinorUnits>::max() / (2 * kWhole);
  std::optional<std::uint32_t> deepest;
  for (const Offer& offer : offers.offers) {
    if (!is_marked_down(offer) || *offer.full_price <= 0) continue;
    MinorUnits off = *offer.full_price - *offer.price;
    MinorUnits full = *offer.full_price;
    for (; full > kLargest; full /= kWhole) off /= kWhole;
    const auto depth = static_cast<std::uint32_t>((off * kWhole + full / 2) / full);
    deepest = std::max(deepest.value_or(0), depth);
  }
  return deepest;
}

void LadderTally::add(const LineOffers& offers) {
  const auto lowest = lowest_selling(offers);
  if (!lowest || !offers.currency) return;
  Prices& prices = by_currency_[*offers.currency];
  prices.lowest.push_back(*lowest);
  if (const auto depth = markdown_depth(offers)) prices.depths.push_back(*depth);
}

void LadderTally::merge(const LadderTally& other) {
  for (const auto& [currency, prices] : other.by_currency_) {
    Prices& own = by_currency_[currency];
    own.lowest.insert(own.lowest.end(), prices.lowest.begin(), prices.lowest.end());
    own.depths.insert(own.depths.end(), prices.depths.begin(), prices.depths.end());
  }
}

std::vector<PriceLadder> LadderTally::ladders() const {
  std::vector<PriceLadder> ladders;
  for (const auto& [currency, prices] : by_currency_) {
    std::vector<MinorUnits> ascending = prices.lowest;
    std::sort(ascending.begin(), ascending.end());
    PriceLadder ladder{currency,
                       static_cast<std::uint32_t>(ascending.size()),
                       ascending.front(),
                       quartile(ascending, 1),
                       quartile(ascending, 2),
                       quartile(ascending, 3),
                       ascending.back(),
                       static_cast<std::uint32_t>(prices.depths.size())};
    if (!prices.depths.empty()) {
      std::vector<MinorUnits> depths = prices.depths;
      std::sort(depths.begin(), depths.end());
      ladder.median_depth = static_cast<std::uint32_t>(quartile(depths, 2));
    }
    ladders.push_back(ladder);
  }
  return ladders;
}

}  // namespace rangebook
