// The walk from the roots of all blocks to products, and the grouping of variants.
#include "importers/schema_org_product.h"

#include <algorithm>
#include <array>
#include <unordered_set>

namespace rangebook {
namespace {

/// A variant stands in a group, which may stand in another; no deeper.
constexpr std::size_t kMaxGroups = 4;
constexpr std::size_t kMaxBreadcrumbs = 8;
constexpr std::size_t kMaxOtherTypes = 8;

constexpr auto kProductTypes =
    std::to_array<std::string_view>({"Product", "ProductGroup", "IndividualProduct", "ProductModel",
                                     "SomeProducts", "ProductCollection"});

// Properties that place their value on the page.
constexpr auto kPlacing = std::to_array<std::string_view>(
    {"@graph", "mainEntity", "mainEntityOfPage", "itemListElement", "item", "itemOffered", "offers",
     "makesOffer", "hasOfferCatalog", "hasVariant"});

bool is_product_type(std::string_view name) {
  return std::find(kProductTypes.begin(), kProductTypes.end(), schema_org_name(name)) !=
         kProductTypes.end();
}

// `additionalType` is how a thing of one type says in microdata that it is of another too.
bool is_product(const LinkedData& data, JsonId thing) {
  const bool typed = std::any_of(kProductTypes.begin(), kProductTypes.end(),
                                 [&](std::string_view type) { return data.is_a(thing, type); });
  if (typed || !data.is_object(thing)) return typed;
  const auto others = data.values(thing, "additionalType");
  return std::any_of(others.begin(), others.end(), [&](JsonId value) {
    return is_product_type(data.is_object(value) ? data.id(value) : data.text(value));
  });
}

// What `hasVariant` and `itemOffered` hold is often left without a type. A mere address of another
// page (`{"url": ..}`) says that a variant exists there, but nothing about it.
bool may_be_variant(const LinkedData& data, JsonId thing) {
  return data.is_object(thing) && !data.is_reference(thing) &&
         (is_product(data, thing) || data.types(thing).empty());
}

}  // namespace

ProductFinder::ProductFinder(const LinkedData& data, const std::vector<JsonId>& roots)
    : data_(data), seen_(data.size(), false) {
  for (const JsonId root : roots) {
    // A block may be one thing or an array of things.
    left_.push_back(root);
    while (!left_.empty()) {
      const JsonId thing = left_.back();
      left_.pop_back();
      visit(thing);
    }
  }
  join_by_group_id();
  build_leaves();
}

void ProductFinder::push(JsonId thing) {
  thing = data_.resolve(thing);
  if (data_.is_object(thing) && !seen_[thing]) left_.push_back(thing);
}

void ProductFinder::visit(JsonId thing) {
  if (data_.node(thing).kind == JsonKind::array) {
    std::vector<JsonId> entries;
    for (JsonId at = data_.node(thing).first_child; at != 0; at = data_.node(at).next) {
      entries.push_back(at);
    }
    left_.insert(left_.end(), entries.rbegin(), entries.rend());
    return;
  }
  if (!data_.is_object(thing) || seen_[thing]) return;
  seen_[thing] = true;
  if (is_product(data_, thing) || parent_.contains(thing)) return visit_product(thing);
  note_type(thing);
  if (data_.is_a(thing, "BreadcrumbList")) {
    if (breadcrumbs_.size() < kMaxBreadcrumbs) breadcrumbs_.push_back(thing);
    return;
  }
  for (const JsonId item : data_.values(thing, "itemOffered")) {
    offered_[data_.resolve(item)].push_back({.offer = thing});
  }
  for (auto property = kPlacing.rbegin(); property != kPlacing.rend(); ++property) {
    const auto values = data_.values(thing, *property);
    for (auto value = values.rbegin(); value != values.rend(); ++value) push(*value);
  }
}

void ProductFinder::note_type(JsonId thing) {
  for (const auto type : data_.types(thing)) {
    if (other_types_.size() == kMaxOtherTypes) return;
    const bool known =
        std::find(other_types_.begin(), other_types_.end(), type) != other_types_.end();
    if (!known) other_types_.push_back(type);
  }
}

void ProductFinder::visit_product(JsonId product) {
  if (data_.is_reference(product)) return;
  products_.push_back(product);
  visit_offers(product);
  for (const JsonId group : data_.values(product, "isVariantOf")) {
    const JsonId at = data_.resolve(group);
    if (data_.is_object(at)) set_parent(product, at);
    push(at);
  }
  const auto variants = data_.values(product, "hasVariant");
  for (auto variant = variants.rbegin(); variant != variants.rend(); ++variant) {
    const JsonId at = data_.resolve(*variant);
    if (!may_be_variant(data_, at)) continue;
    set_parent(at, product);
    push(at);
  }
  for (const JsonId page : data_.values(product, "mainEntityOfPage")) push(page);
}

void ProductFinder::visit_offers(JsonId product) {
  for (const auto& place : offers_of(data_, product)) {
    for (const JsonId item : data_.values(place.offer, "itemOffered")) {
      const JsonId at = data_.resolve(item);
      const bool itself =
          at == product || (!data_.id(at).empty() && data_.id(at) == data_.id(product));
      if (itself || !may_be_variant(data_, at)) continue;
      set_parent(at, product);
      offered_[at].push_back(place);
      push(at);
    }
  }
}

// The first statement wins, and no product stands in itself.
void ProductFinder::set_parent(JsonId variant, JsonId group) {
  JsonId at = group;
  for (std::size_t depth = 0; at != 0; ++depth) {
    if (at == variant || depth == kMaxGroups) return;
    const auto found = parent_.find(at);
    at = found == parent_.end() ? 0 : found->second;
  }
  parent_.emplace(variant, group);
}

void ProductFinder::join_by_group_id() {
  std::unordered_map<std::string_view, JsonId> groups;
  for (const JsonId product : products_) {
    const auto id = data_.text(product, "productGroupID");
    if (!id.empty()) groups.emplace(id, product);
  }
  for (const JsonId product : products_) {
    const auto found = groups.find(data_.text(product, "inProductGroupWithID"));
    if (found != groups.end() && found->second != product) set_parent(product, found->second);
  }
}

std::vector<JsonId> ProductFinder::groups_around(JsonId product) const {
  std::vector<JsonId> groups;
  auto found = parent_.find(product);
  while (found != parent_.end() && groups.size() < kMaxGroups) {
    groups.push_back(found->second);
    found = parent_.find(found->second);
  }
  return groups;
}

const std::vector<OfferPlace>& ProductFinder::offers_to_all(JsonId group) {
  const auto [found, is_new] = shared_.try_emplace(group);
  if (is_new) {
    found->second = offers_of(data_, group);
    std::erase_if(found->second, [&](const OfferPlace& place) {
      return data_.first(place.offer, "itemOffered") != 0;
    });
  }
  return found->second;
}

// The product's own offers, else those elsewhere that name it, else the one offer of its group that
// holds for all variants.
void ProductFinder::find_offers(ProductLeaf& leaf) {
  leaf.offers = offers_of(data_, leaf.product);
  if (!leaf.offers.empty()) return;
  const auto named = offered_.find(leaf.product);
  if (named != offered_.end()) {
    leaf.offers = named->second;
    return;
  }
  for (const JsonId group : leaf.groups) {
    const auto& shared = offers_to_all(group);
    if (shared.empty()) continue;
    if (shared.size() == 1) leaf.offers = shared;
    if (shared.size() > 1) leaf.undecided = group;
    return;
  }
}

void ProductFinder::build_leaves() {
  std::unordered_set<JsonId> with_variants;
  for (const auto& [variant, group] : parent_) with_variants.insert(group);
  std::sort(products_.begin(), products_.end());
  for (const JsonId product : products_) {
    if (with_variants.contains(product)) continue;
    ProductLeaf leaf{.product = product, .groups = groups_around(product)};
    find_offers(leaf);
    leaves_.push_back(std::move(leaf));
  }
}

}  // namespace rangebook
