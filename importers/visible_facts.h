// What else the visible text of a product page says: availability, colour, composition,
// description, breadcrumbs.
#pragma once

#include <string>

#include "importers/page_view.h"

namespace rangebook {

/// `InStock`, `OutOfStock` or empty. Words near the heading decide; a button to buy says in stock
/// where no words do; both against each other say nothing.
std::string visible_stock(const PageView& view);

/// The text behind a label such as "Colour:"; empty if none.
std::string visible_colour(const PageView& view);

/// A text with shares of fibres ("65% cotton, 35% linen") as it stands, without its label.
std::string visible_composition(const PageView& view);

/// The text of the element that is named as the description, at most 2000 bytes.
std::string visible_description(const PageView& view);

/// The breadcrumbs joined with " > ", without the start page at the front and `product` at the end.
std::string visible_breadcrumbs(const PageView& view, const std::string& product);

/// True for what shops call their start page (`Home`, `Startseite`).
bool is_start_page(std::string_view name);

}  // namespace rangebook
