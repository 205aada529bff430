// Lowest prices of a line.
#include "tracker/line_prices.h"

namespace rangebook {
namespace {

void lower(std::optional<MinorUnits>& lowest, const std::optional<MinorUnits>& price) {
  if (price && (!lowest || *price < *lowest)) lowest = price;
}

}  // namespace

std::optional<MinorUnits> lowest_selling(const LineOffers& offers) {
  std::optional<MinorUnits> lowest;
  for (const Offer& offer : offers.offers) lower(lowest, offer.price);
  return lowest;
}

std::optional<MinorUnits> lowest_undiscounted(const LineOffers& offers) {
  std::optional<MinorUnits> lowest;
  for (const Offer& offer : offers.offers) lower(lowest, undiscounted(offer));
  return lowest;
}

}  // namespace rangebook
