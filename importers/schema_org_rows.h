// Turns the products of a page into rows: one for each variant and offer.
//
// The code and the name of a row are those of the line: of the group where there is one. A
// variant's own code goes to `variant_code`.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <unordered_set>
#include <vector>

#include "importers/schema_org_product.h"
#include "schema/mapping_preview.h"
#include "schema/raw_row.h"
#include "schema/rejection.h"

namespace rangebook {

/// What the page around the products says.
struct PageFrame {
  std::string address;  ///< canonical address of the page; empty if not stated
  std::string base;     ///< what relative addresses are resolved against; empty if not known
};

/// Something to say about a row besides its cells.
struct RowNote {
  RejectionKind kind = RejectionKind::conflicting_rows;
  Refused refused = Refused::nothing;
  Field field = Field::price;
  std::string what = {};        ///< one sentence
  std::string how_to_fix = {};  ///< one sentence
  std::string excerpt = {};
  std::optional<SyntaxConflict> conflict = std::nullopt;  ///< where two syntaxes contradict
};

struct ProductRow {
  std::array<std::string, kFieldCount> cells;
  std::uint32_t byte = 0;           ///< of the product in the page
  std::optional<PriceDoubt> doubt;  ///< once for each offer in doubt
  std::vector<RowNote> notes;

  std::string& operator[](Field field) { return cells[static_cast<std::size_t>(field)]; }
  const std::string& operator[](Field field) const {
    return cells[static_cast<std::size_t>(field)];
  }
};

/// Makes rows leaf by leaf. `data` and `finder` must outlive this.
class ProductRows {
 public:
  ProductRows(const LinkedData& data, const ProductFinder& finder, PageFrame frame);

  /// The rows of the next leaf, empty when all of them stood in the page before; nothing at the
  /// end.
  std::optional<std::vector<ProductRow>> next();

 private:
  ProductRow common_cells(const ProductLeaf& leaf) const;
  void fill_codes(const ProductLeaf& leaf, ProductRow& row) const;
  void fill_offer(const ProductLeaf& leaf, const OfferPlace& place, ProductRow& row);
  std::string address_cell(const ProductLeaf& leaf) const;
  std::string breadcrumb_category(const std::string& name) const;
  void keep(ProductRow row, std::vector<ProductRow>& rows);

  const LinkedData& data_;
  const ProductFinder& finder_;
  PageFrame frame_;
  bool one_line_ = false;
  std::size_t next_ = 0;
  std::unordered_set<std::string> known_;
  std::unordered_set<JsonId> doubted_;
};

/// The names of a BreadcrumbList in the order of their positions, joined with " > ": without the
/// start page at the front and without `product` at the end.
std::string breadcrumb_path(const LinkedData& data, JsonId list, const std::string& product);

}  // namespace rangebook
