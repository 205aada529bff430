// From each amount up to the box that links to its product.
#include "importers/page_listing.h"

#include <algorithm>
#include <map>
#include <set>

#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

constexpr std::uint32_t kMostNodes = 150;  // of one box
constexpr std::size_t kFewest = 3;
constexpr std::size_t kShortestName = 3;

bool is_heading(std::string_view name) {
  return name.size() == 2 && name[0] == 'h' && name[1] >= '2' && name[1] <= '6';
}

HtmlId first_link(const PageView& view, HtmlId box) {
  const HtmlTree& tree = view.tree();
  for (HtmlId id = box; id < tree[box].end; ++id) {
    const auto address = tree.is(id, "a") ? tree.attribute(id, "href") : std::nullopt;
    const bool leads = address && !address->empty() && !address->starts_with('#') &&
                       !address->starts_with("javascript:");
    if (leads) return id;
  }
  return 0;
}

// The smallest box around an amount that has a link; 0 when that is no small box.
HtmlId box_around(const PageView& view, HtmlId element) {
  const HtmlTree& tree = view.tree();
  for (HtmlId at = element; at != 0 && tree[at].end - at <= kMostNodes; at = tree[at].parent) {
    if (view.heading() != 0 && view.inside(view.heading(), at)) return 0;
    const HtmlId link = first_link(view, at);
    if (link != 0) return at;
    if (tree.is(at, "a") && tree.has(at, "href")) return at;
  }
  return 0;
}

bool is_name(const std::string& text) {
  return text.size() >= kShortestName && find_money(text).empty();
}

// A heading inside the box, an element named as title, the link's own text, its picture's.
std::string name_of(const PageView& view, HtmlId box, HtmlId link) {
  const HtmlTree& tree = view.tree();
  std::string titled;
  std::string pictured;
  for (HtmlId id = box; id < tree[box].end; ++id) {
    if (tree[id].is_text) continue;
    std::string text = view.line(id);
    if (is_heading(tree[id].name) && is_name(text)) return text;
    if (titled.empty() && id != box && view.named(id, PageWord::title_token) && is_name(text)) {
      titled = text;
    }
    if (pictured.empty() && tree.is(id, "img")) pictured = tree.attribute(id, "alt").value_or("");
  }
  if (!titled.empty()) return titled;
  for (HtmlId id = link; id < tree[box].end; ++id) {
    if (tree.is(id, "a") && is_name(view.line(id))) return view.line(id);
  }
  return clean_text(pictured);
}

std::string image_of(const HtmlTree& tree, HtmlId box) {
  for (HtmlId id = box; id < tree[box].end; ++id) {
    if (tree.is(id, "img") && tree.has(id, "src")) return std::string(*tree.attribute(id, "src"));
  }
  return {};
}

std::string kind_of(const HtmlTree& tree, HtmlId box) {
  return std::string(tree[box].name) + "." + std::string(tree.attribute(box, "class").value_or(""));
}

using Boxes = std::map<HtmlId, std::vector<ShownAmount>>;

std::vector<ListedProduct> read_boxes(const PageView& view, const Boxes& boxes) {
  std::vector<ListedProduct> out;
  std::set<std::string> seen;
  for (const auto& [box, amounts] : boxes) {
    const HtmlId link = first_link(view, box);
    ListedProduct product{.element = box, .name = {}, .address = {}, .image = {}, .price = {}};
    product.address = view.tree().attribute(link, "href").value_or("");
    product.name = name_of(view, box, link);
    product.image = image_of(view.tree(), box);
    product.price = price_of_block(view, amounts);
    if (!product.name.empty() && seen.insert(product.address).second) {
      out.push_back(std::move(product));
    }
  }
  return out;
}

}  // namespace

std::vector<ListedProduct> find_listed(const PageView& view,
                                       const std::vector<ShownAmount>& amounts) {
  std::map<std::string, Boxes> kinds;
  for (const auto& amount : amounts) {
    const HtmlId box = box_around(view, amount.element);
    if (box != 0) kinds[kind_of(view.tree(), box)][box].push_back(amount);
  }
  std::vector<ListedProduct> best;
  for (const auto& [kind, boxes] : kinds) {
    if (boxes.size() < std::max(kFewest, best.size() + 1)) continue;
    auto listed = read_boxes(view, boxes);
    if (listed.size() >= kFewest && listed.size() > best.size()) best = std::move(listed);
  }
  return best;
}

}  // namespace rangebook
