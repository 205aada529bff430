// Puts the facts of the visible text into rows.
#include "importers/visible_text.h"

#include <algorithm>

#include "importers/page_listing.h"
#include "importers/page_view.h"
#include "importers/saved_page.h"
#include "importers/schema_org_words.h"
#include "importers/size_rows.h"
#include "importers/visible_colour.h"
#include "importers/visible_composition.h"
#include "importers/visible_crumbs.h"
#include "importers/visible_facts.h"
#include "importers/visible_price.h"
#include "importers/visible_sizes.h"

namespace rangebook {
namespace {

void put_price(ProductRow& row, const VisiblePrice& price) {
  row[Field::price] = price.price;
  row[Field::full_price] = price.full_price;
  row[Field::currency] = price.currency;
  row.doubt = price.doubt;
}

std::vector<ProductRow> listing_rows(const PageView& view, const std::vector<ListedProduct>& listed,
                                     const PageFrame& frame) {
  const std::string category = visible_breadcrumbs(view, "");
  std::vector<ProductRow> rows;
  for (const auto& product : listed) {
    ProductRow& row = rows.emplace_back();
    row.byte = view.tree()[product.element].byte;
    row[Field::name] = product.name;
    row[Field::url] = link_address(product.address, frame.base);
    row[Field::image] = picture_address(product.image, frame.base);
    row[Field::category] = category;
    put_price(row, product.price);
  }
  return rows;
}

// A heading and an amount make no product: pages about delivery have both.
bool offers_something(const PageView& view, const VisiblePrice& price, const ProductRow& row,
                      const std::vector<VisibleSize>& sizes) {
  return !row[Field::in_stock].empty() || !sizes.empty() || !row[Field::composition].empty() ||
         view.named_near(price.nearest, PageWord::price_token, 3);
}

std::vector<ProductRow> product_rows(const PageView& view, const VisiblePrice& price,
                                     const PageFrame& frame) {
  ProductRow row;
  row.byte = view.tree()[view.heading()].byte;
  row[Field::name] = view.heading_text();
  row[Field::category] = visible_breadcrumbs(view, row[Field::name]);
  row[Field::colour] = visible_colour(view);
  row[Field::composition] = visible_composition(view);
  row[Field::description] = visible_description(view);
  row[Field::url] = frame.address;
  row[Field::in_stock] = visible_stock(view);
  put_price(row, price);
  const auto sizes = find_visible_sizes(view);
  if (!offers_something(view, price, row, sizes)) return {};
  return rows_by_stock(std::move(row), sizes);
}

}  // namespace

std::vector<ProductRow> read_visible_text(const PageView& view, const PageFrame& frame) {
  const auto amounts = shown_amounts(view);
  const auto listed = find_listed(view, amounts);
  const auto price = find_visible_price(view, amounts);
  const bool of_a_card = price && std::any_of(listed.begin(), listed.end(), [&](const auto& card) {
                           return view.inside(price->nearest, card.element);
                         });
  if (!listed.empty() && (of_a_card || !price)) return listing_rows(view, listed, frame);
  if (!price || view.heading() == 0) return {};
  return product_rows(view, *price, frame);
}

}  // namespace rangebook
