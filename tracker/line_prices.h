// Prices of a line at a glance, over all its variants.
#pragma once

#include <optional>

#include "schema/listing.h"

namespace rangebook {

/// The lowest price anything of the line sells for; nothing if no price is stated.
std::optional<MinorUnits> lowest_selling(const LineOffers& offers);

/// The lowest price without markdowns; nothing if no price is stated.
std::optional<MinorUnits> lowest_undiscounted(const LineOffers& offers);

}  // namespace rangebook
