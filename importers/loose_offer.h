// What a page says of its product's price outside all product markup: with itemprop where no item
// is, and in data for its own scripts. Believed only where there is nothing to choose between.
#pragma once

#include <vector>

#include "importers/page_view.h"
#include "importers/schema_org_rows.h"

namespace rangebook {

/// One row from elements with `itemprop=price` (and priceCurrency, availability, sku) that are
/// inside no item; nothing when they state several prices.
std::vector<ProductRow> read_loose_properties(const PageView& view);

/// One row from plain JSON in script elements: of objects whose name or title is the page's
/// heading, the price. It must have a decimal sign or a sign of currency ("9500" may be cents), and
/// all such objects must agree; else nothing.
std::vector<ProductRow> read_script_data(const PageView& view);

}  // namespace rangebook
