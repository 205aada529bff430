// What a product is made of, as its page says it.
#pragma once

#include <string>

#include "importers/page_view.h"

namespace rangebook {

/// A text with shares of fibres ("65% cotton, 35% linen") as it stands, without its label and
/// without sentences about other things. Parts in lines of their own ("Shell", "Lining") are joined
/// as sentences.
std::string visible_composition(const PageView& view);

}  // namespace rangebook
