// Writes styles as the product pages a browser would have saved: schema.org markup as JSON-LD
// among navigation, styles, scripts and visible text.
#pragma once

#include <string>

#include "demo-feeds/story.h"

namespace demo {

/// Text as HTML and XML want it, in elements and in attributes.
std::string escaped(const std::string& text);

/// One page. The form of the markup and the spelling of prices and stock vary from style to
/// style, as they do between real shops; the facts do not.
std::string product_page(const House& house, const Capture& capture, const Style& style);

}  // namespace demo
