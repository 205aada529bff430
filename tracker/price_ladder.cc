// Quartiles of the prices of a category.
#include "tracker/price_ladder.h"

#include <algorithm>

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

void LadderTally::add(const LineOffers& offers) {
  const auto lowest = lowest_selling(offers);
  if (!lowest || !offers.currency) return;
  Prices& prices = by_currency_[*offers.currency];
  prices.lowest.push_back(*lowest);
  if (std::any_of(offers.offers.begin(), offers.offers.end(), is_marked_down)) {
    ++prices.marked_down;
  }
}

void LadderTally::merge(const LadderTally& other) {
  for (const auto& [currency, prices] : other.by_currency_) {
    Prices& own = by_currency_[currency];
    own.lowest.insert(own.lowest.end(), prices.lowest.begin(), prices.lowest.end());
    own.marked_down += prices.marked_down;
  }
}

std::vector<PriceLadder> LadderTally::ladders() const {
  std::vector<PriceLadder> ladders;
  for (const auto& [currency, prices] : by_currency_) {
    std::vector<MinorUnits> ascending = prices.lowest;
    std::sort(ascending.begin(), ascending.end());
    ladders.push_back({currency, static_cast<std::uint32_t>(ascending.size()), ascending.front(),
                       quartile(ascending, 1), quartile(ascending, 2), quartile(ascending, 3),
                       ascending.back(), prices.marked_down});
  }
  return ladders;
}

}  // namespace rangebook
