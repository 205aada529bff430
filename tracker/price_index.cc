// Jevons, Dutot and Carli.
#include "tracker/price_index.h"

#include <algorithm>
#include <cmath>

namespace rangebook {
namespace {

double relative(const PricePair& pair) {
  return static_cast<double>(pair.after) / static_cast<double>(pair.before);
}

std::int64_t millionths(double index) { return std::llround(index * 1e6); }

}  // namespace

double jevons_index(std::span<const PricePair> prices) {
  double logs = 0;
  for (const PricePair& pair : prices) logs += std::log(relative(pair));
  return std::exp(logs / static_cast<double>(prices.size()));
}

double dutot_index(std::span<const PricePair> prices) {
  double before = 0;
  double after = 0;
  for (const PricePair& pair : prices) {
    before += static_cast<double>(pair.before);
    after += static_cast<double>(pair.after);
  }
  return after / before;
}

double carli_index(std::span<const PricePair> prices) {
  double sum = 0;
  for (const PricePair& pair : prices) sum += relative(pair);
  return sum / static_cast<double>(prices.size());
}

// Sums of doubles depend on their order, so the pairs are put in one.
std::optional<IndexFact> elementary_indices(std::vector<PricePair> prices) {
  std::erase_if(prices, [](const PricePair& pair) { return pair.before <= 0 || pair.after <= 0; });
  if (prices.empty()) return std::nullopt;
  std::sort(prices.begin(), prices.end());
  return IndexFact{millionths(jevons_index(prices)), millionths(dutot_index(prices)),
                   millionths(carli_index(prices)), static_cast<std::uint32_t>(prices.size())};
}

}  // namespace rangebook
