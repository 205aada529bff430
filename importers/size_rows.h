// One row of a product and the sizes it comes in, made into a row for those that can be had and one
// for those that cannot.
#pragma once

#include <vector>

#include "importers/schema_org_rows.h"
#include "importers/visible_sizes.h"

namespace rangebook {

/// Where all sizes are alike, or the product as a whole is sold out, one row holds them all.
std::vector<ProductRow> rows_by_stock(ProductRow row, const std::vector<VisibleSize>& sizes);

}  // namespace rangebook
