// The price of the page's product, read from the visible text: which of the amounts on the page is
// the one to pay, and which one it was before.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "importers/page_amounts.h"
#include "importers/page_view.h"
#include "importers/schema_org_offer.h"

namespace rangebook {

struct VisiblePrice {
  std::string price;
  std::string full_price;
  std::string currency;
  HtmlId element = 0;
  HtmlId nearest = 0;  ///< the amount nearest the heading, from which the others were found
  std::optional<PriceDoubt> doubt;
};

/// Of amounts that stand together: the reduced one where one is marked so, else the only one that
/// is not struck through, or the only one called price; the highest of the others is the full
/// price. Several candidates, a range and a price `from` leave the price out, with the doubt in
/// words.
VisiblePrice price_of_block(const PageView& view, const std::vector<ShownAmount>& block);

/// The price nearest the heading, in the page's structure first, in its order second; amounts whose
/// elements are called price come before others. Nothing when the page shows none.
std::optional<VisiblePrice> find_visible_price(const PageView& view,
                                               const std::vector<ShownAmount>& amounts);

}  // namespace rangebook
