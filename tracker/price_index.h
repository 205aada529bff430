// Elementary price indices: how the prices of the same articles moved, without weights.
// Jevons is the headline: it passes the time-reversal test, while Carli drifts upwards when
// chained and Dutot leans on the dearest articles (Consumer Price Index Manual, ILO 2020, chapter
// 8).
#pragma once

#include <span>

#include "schema/change.h"
#include "schema/money.h"

namespace rangebook {

/// Prices of one article then and now, in the same currency; both above zero.
struct PricePair {
  MinorUnits before = 0;
  MinorUnits after = 0;

  auto operator<=>(const PricePair&) const = default;
};

/// Geometric mean of the price relatives. All three need at least one pair.
double jevons_index(std::span<const PricePair> prices);
/// Ratio of the arithmetic means of the prices.
double dutot_index(std::span<const PricePair> prices);
/// Arithmetic mean of the price relatives.
double carli_index(std::span<const PricePair> prices);

/// All three in millionths, rounded to nearest. Pairs with a price of zero or less have no relative
/// and are left out; nothing when none is left. The order of `prices` does not matter.
std::optional<IndexFact> elementary_indices(std::vector<PricePair> prices);

}  // namespace rangebook
