// Elementary price indices in whole numbers, exact to the last digit shown. Slow and simple: the
// program under test uses floating point, so a slip there cannot hide here as well.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "demo-feeds/range.h"

namespace demo {

using PricePair = std::pair<Minor, Minor>;  ///< then, now; both above 0

/// Geometric mean of price ratios, `1.031200`: six places, rounded to nearest.
std::string jevons(const std::vector<PricePair>& pairs);
/// Ratio of mean prices.
std::string dutot(const std::vector<PricePair>& pairs);
/// Mean of price ratios.
std::string carli(const std::vector<PricePair>& pairs);

}  // namespace demo
