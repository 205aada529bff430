// Open Graph product tags in the head of a page (`product:price:amount`, `og:title`, ..).
#pragma once

#include <vector>

#include "importers/html_tree.h"
#include "importers/schema_org_rows.h"

namespace rangebook {

/// One row, or none: a page is a product when its tags give a price or call it `product`.
std::vector<ProductRow> read_open_graph(const HtmlTree& tree, const PageFrame& frame);

}  // namespace rangebook
