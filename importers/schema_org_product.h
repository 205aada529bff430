// Finds the products that a page itself offers, and which of them are variants of one line.
//
// Only properties that place a thing on the page are followed (`mainEntity`, `itemListElement`,
// `hasVariant`, `itemOffered`, ..). What the page merely mentions, such as related products,
// reviewed items or orders, is no part of the range that was looked at.
#pragma once

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "importers/json_ld.h"
#include "importers/schema_org_offer.h"

namespace rangebook {

/// A product that gives rows: a variant, or a whole line whose variants are not told apart.
struct ProductLeaf {
  JsonId product = 0;
  /// The product group (or the product with several variants) around it, and what is around
  /// that; nearest first. Facts that the product lacks come from here.
  std::vector<JsonId> groups = {};
  std::vector<OfferPlace> offers = {};
  /// A group with several offers that do not say which variant they are for; 0 if none.
  JsonId undecided = 0;
};

/// The products of a page in the order of the document.
class ProductFinder {
 public:
  ProductFinder(const LinkedData& data, const std::vector<JsonId>& roots);

  const std::vector<ProductLeaf>& leaves() const { return leaves_; }
  const std::vector<JsonId>& breadcrumbs() const { return breadcrumbs_; }
  /// The first types of things that are no products, each once; for messages.
  const std::vector<std::string_view>& other_types() const { return other_types_; }

 private:
  void visit(JsonId thing);
  void visit_product(JsonId product);
  void visit_offers(JsonId product);
  void note_type(JsonId thing);
  void push(JsonId thing);
  void set_parent(JsonId variant, JsonId group);
  void join_by_group_id();
  void build_leaves();
  std::vector<JsonId> groups_around(JsonId product) const;
  void find_offers(ProductLeaf& leaf);
  const std::vector<OfferPlace>& offers_to_all(JsonId group);

  const LinkedData& data_;
  std::vector<JsonId> left_;
  std::vector<bool> seen_;
  std::vector<JsonId> products_;
  std::unordered_map<JsonId, JsonId> parent_;
  std::unordered_map<JsonId, std::vector<OfferPlace>> offered_;  ///< by `itemOffered`
  std::unordered_map<JsonId, std::vector<OfferPlace>> shared_;   ///< of a group, for all variants
  std::vector<ProductLeaf> leaves_;
  std::vector<JsonId> breadcrumbs_;
  std::vector<std::string_view> other_types_;
};

}  // namespace rangebook
