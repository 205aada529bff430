// The colour a product page shows: behind a label, or among the choices below one.
#pragma once

#include <string>

#include "importers/page_view.h"

namespace rangebook {

/// The colour behind a label such as "Colour:", in the same text or the next one. Where the label
/// stands above choices (options, radio buttons, swatches with a title), the one that is chosen;
/// all of them, as "Olive|Stone", where none is. Empty if the page has no such label.
std::string visible_colour(const PageView& view);

}  // namespace rangebook
