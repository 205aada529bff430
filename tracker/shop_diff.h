// Changes of the shop as a whole and of its categories.
#pragma once

#include <vector>

#include "schema/change.h"
#include "tracker/category_book.h"

namespace rangebook {

/// Appends reach-widened and reach-narrowed (a size beyond the old ends of the category's reach, in
/// a system and fit range both captures have), entry-price-changed (lowest selling price, in each
/// currency both have) and price-index (full prices of carried lines, where Jevons is not 1).
void diff_category(const CategoryFigures& figures, const CaptureInfo& from, const CaptureInfo& to,
                   std::vector<Change>& changes);

}  // namespace rangebook
