// What else the visible text of a product page says: availability, description.
#pragma once

#include <string>

#include "importers/page_view.h"

namespace rangebook {

/// `InStock`, `OutOfStock` or empty. Words near the heading decide; a button to buy says in stock
/// where no words do; both against each other say nothing.
std::string visible_stock(const PageView& view);

/// The text of the element that is named as the description, at most 2000 bytes.
std::string visible_description(const PageView& view);

}  // namespace rangebook
