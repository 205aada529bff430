// Candidates are collected first, and give a row only if they agree.
#include "importers/loose_offer.h"

#include <algorithm>
#include <map>
#include <string>

#include "importers/microdata.h"
#include "importers/one_price.h"
#include "importers/schema_org_offer.h"
#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

bool is_in_item(const HtmlTree& tree, HtmlId id) {
  for (; id != 0; id = tree[id].parent) {
    if (tree.has(id, "itemscope")) return true;
  }
  return false;
}

}  // namespace

std::vector<ProductRow> read_loose_properties(const PageView& view) {
  const HtmlTree& tree = view.tree();
  std::map<std::string, std::string, std::less<>> said;
  OnePrice price;
  for (HtmlId id = 1; id < tree.size(); ++id) {
    const auto names = tree.attribute(id, "itemprop");
    if (!names || is_in_item(tree, id)) continue;
    const std::string text = clean_text(element_value(tree, id));
    for (const auto& name : attribute_words(*names)) {
      if (name == "price") price.add(text, "");
      if (!text.empty()) said.emplace(name, text);
    }
  }
  if (!price.is_certain()) return {};
  ProductRow row;
  row.byte = tree[view.heading()].byte;
  row[Field::name] = view.heading_text();
  if (row[Field::name].empty()) row[Field::name] = said["name"];
  if (row[Field::name].empty()) return {};
  row[Field::price] = price.text();
  row[Field::currency] = said["priceCurrency"];
  row[Field::in_stock] = availability_word(said["availability"]);
  row[Field::line_code] = said["sku"];
  return {std::move(row)};
}

}  // namespace rangebook
