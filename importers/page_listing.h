// The products of a listing page, from its visible text: boxes of one kind with a link and a price
// each.
#pragma once

#include <string>
#include <vector>

#include "importers/page_view.h"
#include "importers/visible_price.h"

namespace rangebook {

struct ListedProduct {
  HtmlId element = 0;
  std::string name;
  std::string address;  ///< as written
  std::string image;    ///< as written
  VisiblePrice price;
};

/// The largest set of at least three boxes with the same element and class that lead to different
/// addresses. Empty when the page is no listing.
std::vector<ListedProduct> find_listed(const PageView& view,
                                       const std::vector<ShownAmount>& amounts);

}  // namespace rangebook
