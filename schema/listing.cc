// What the prices of an offer mean.
#include "schema/listing.h"

namespace rangebook {

std::optional<MinorUnits> undiscounted(const Offer& offer) {
  return offer.full_price ? offer.full_price : offer.price;
}

bool is_marked_down(const Offer& offer) {
  return offer.price && offer.full_price && *offer.price < *offer.full_price;
}

}  // namespace rangebook
