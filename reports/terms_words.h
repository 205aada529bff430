// Terms in the fewest words that are still exact, for one cell of a table.
#pragma once

#include "reports/phrase.h"
#include "schema/terms.h"

namespace rangebook {

/// `Standard £3.95, free from £60.00; Express £6.95`; empty where nothing is stated.
Phrase delivery_words(const Terms& terms);
/// `28 days from delivery; by post £2.50; in store free`: of the policy without a region, or else
/// the first; empty where nothing is stated.
Phrase returns_words(const Terms& terms);

}  // namespace rangebook
