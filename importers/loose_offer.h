// What a page says of its product's price outside all product markup, with itemprop where no item
// is. Believed only where there is nothing to choose between.
#pragma once

#include <vector>

#include "importers/page_view.h"
#include "importers/schema_org_rows.h"

namespace rangebook {

/// One row from elements with `itemprop=price` (and priceCurrency, availability, sku) that are
/// inside no item; nothing when they state several prices.
std::vector<ProductRow> read_loose_properties(const PageView& view);

}  // namespace rangebook
