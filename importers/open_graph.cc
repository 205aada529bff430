// The meta elements of a page by name, then the row.
#include "importers/open_graph.h"

#include <map>
#include <string>
#include <utility>

#include "importers/saved_page.h"
#include "importers/schema_org_offer.h"
#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

using Tags = std::map<std::string, std::string, std::less<>>;

Tags tags_of(const HtmlTree& tree) {
  Tags tags;
  for (HtmlId id = 1; id < tree.size(); ++id) {
    if (!tree.is(id, "meta")) continue;
    auto name = tree.attribute(id, "property");
    if (!name) name = tree.attribute(id, "name");
    const auto content = tree.attribute(id, "content");
    if (!name || !content) continue;
    std::string text = clean_text(*content);
    if (!text.empty()) tags.emplace(std::string(*name), std::move(text));
  }
  return tags;
}

std::string first_of(const Tags& tags, std::initializer_list<std::string_view> names) {
  for (const auto name : names) {
    const auto found = tags.find(name);
    if (found != tags.end()) return found->second;
  }
  return {};
}

// "Wrap dress | Shop" is the dress.
std::string without_site(std::string title, const std::string& site) {
  if (site.empty() || !title.ends_with(site)) return title;
  std::string_view rest = std::string_view(title).substr(0, title.size() - site.size());
  const std::size_t end = rest.find_last_not_of(" |-:");
  // A long dash before the name of the shop is cut off too.
  if (end == rest.npos) return title;
  rest = rest.substr(0, end + 1);
  for (const std::string_view dash : {"\u2013", "\u2014", "\u00b7"}) {
    if (rest.ends_with(dash)) rest.remove_suffix(dash.size());
  }
  return clean_text(rest);
}

}  // namespace

std::vector<ProductRow> read_open_graph(const HtmlTree& tree, const PageFrame& frame) {
  const Tags tags = tags_of(tree);
  const auto get = [&](std::initializer_list<std::string_view> names) {
    return first_of(tags, names);
  };
  ProductRow row;
  row[Field::price] = get({"product:sale_price:amount", "product:price:amount", "og:price:amount"});
  const bool product = get({"og:type"}).find("product") != std::string::npos;
  const std::string title = get({"og:title"});
  if (title.empty() || (row[Field::price].empty() && !product)) return {};
  row[Field::name] = without_site(title, get({"og:site_name"}));
  row[Field::full_price] = get({"product:original_price:amount", "og:price:standard_amount"});
  row[Field::currency] =
      get({"product:sale_price:currency", "product:price:currency", "og:price:currency"});
  row[Field::in_stock] = availability_word(get({"product:availability", "og:availability"}));
  row[Field::line_code] = get({"product:retailer_item_id"});
  row[Field::colour] = get({"product:color"});
  row[Field::size] = get({"product:size"});
  row[Field::composition] = get({"product:material"});
  row[Field::category] = get({"product:category"});
  row[Field::description] = get({"og:description"});
  row[Field::image] = picture_address(get({"og:image", "og:image:url"}), frame.base);
  row[Field::url] = link_address(get({"og:url"}), frame.base);
  return {std::move(row)};
}

}  // namespace rangebook
