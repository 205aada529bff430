// Choosing at most one partner for each line so that the weights of the chosen pairs sum to the
// most.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace rangebook {

/// A pair that may be chosen. Weights are positive, below a million, and count to nine decimals:
/// leaving a line alone is worth 0.
struct WeightedPair {
  std::uint32_t row = 0;
  std::uint32_t column = 0;
  double weight = 0;
};

/// Bound on rows times pairs of one connected group up to which the choice is the best there is.
/// Beyond it, where a shop has thousands of lines that all look like each other, the heaviest pair
/// left is taken again and again: never less than half of the best sum.
inline constexpr std::size_t kMaxExactWork = 40'000'000;

/// Indices into `pairs`, ascending, so that no row and no column is met twice.
std::vector<std::size_t> assign(const std::vector<WeightedPair>& pairs,
                                std::size_t max_exact_work = kMaxExactWork);

}  // namespace rangebook
