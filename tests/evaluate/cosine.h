// The plain peer of linking by likeness: words of name and description weighted by their rarity,
// the cosine of two lines, one fixed threshold, the most alike pairs first.
#pragma once

#include "tests/evaluate/score.h"

namespace rangebook::evaluate {

/// The best-known plain way to match product names; one threshold for all data.
Count link_by_cosine(const Seasons& seasons, double threshold);

}  // namespace rangebook::evaluate
