// The rows that the visible text of a page gives: one product with its sizes, or the many of a
// listing page.
#pragma once

#include <vector>

#include "importers/page_view.h"
#include "importers/schema_org_rows.h"

namespace rangebook {

/// Nothing when the page shows no heading with a price. A product whose sizes are partly sold out
/// gives two rows: the sizes that are there and those that are not.
std::vector<ProductRow> read_visible_text(const PageView& view, const PageFrame& frame);

}  // namespace rangebook
