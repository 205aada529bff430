// The schema.org description of a style (https://schema.org/ProductGroup, /Offer).
#pragma once

#include <nlohmann/json.hpp>

#include "demo-feeds/story.h"

namespace demo {

/// A JSON-LD document: a ProductGroup, a @graph with one, or a Product with AggregateOffer.
nlohmann::ordered_json product_markup(const House& house, const Capture& capture,
                                      const Style& style);

}  // namespace demo
