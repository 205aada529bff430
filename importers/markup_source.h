// The products that one syntax of a page describes (JSON-LD, microdata or RDFa), from their values
// to their rows.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "importers/markup_items.h"
#include "importers/schema_org_rows.h"

namespace rangebook {

/// Owns the values of one syntax and reads them in three steps: fill `tree` and `roots`, find the
/// products, read the rows. Stays where it is: its parts refer to each other.
class MarkupSource {
 public:
  MarkupSource() = default;
  MarkupSource(const MarkupSource&) = delete;
  MarkupSource& operator=(const MarkupSource&) = delete;

  JsonTree tree;
  std::vector<JsonId> roots;

  void add(MarkupItems items);
  void find_products(std::string_view language);
  void open_rows(const PageFrame& frame);

  std::size_t products() const { return finder_ ? finder_->leaves().size() : 0; }
  /// The first types of things that are no products, for messages.
  std::vector<std::string_view> other_types() const;
  /// The breadcrumbs, joined with " > " and without `product` at the end; empty if there are none.
  std::string breadcrumbs(const std::string& product) const;
  /// The rows of the next product; nothing at the end.
  std::optional<std::vector<ProductRow>> next();
  /// All rows that are left.
  std::vector<ProductRow> rest();

 private:
  std::optional<LinkedData> data_;
  std::optional<ProductFinder> finder_;
  std::optional<ProductRows> rows_;
};

}  // namespace rangebook
