// Sizes are listed with "|".
#include "importers/size_rows.h"

#include <utility>

namespace rangebook {
namespace {

std::string joined(const std::vector<VisibleSize>& sizes, bool sold_out) {
  std::string out;
  for (const auto& size : sizes) {
    if (size.sold_out == sold_out) out += (out.empty() ? "" : "|") + size.label;
  }
  return out;
}

}  // namespace

std::vector<ProductRow> rows_by_stock(ProductRow row, const std::vector<VisibleSize>& sizes) {
  const std::string there = joined(sizes, false);
  const std::string gone = joined(sizes, true);
  if (gone.empty() || row[Field::in_stock] == "OutOfStock") {
    for (const auto& size : sizes) {
      row[Field::size] += (row[Field::size].empty() ? "" : "|") + size.label;
    }
    return {std::move(row)};
  }
  std::vector<ProductRow> rows;
  ProductRow second = row;
  row[Field::size] = there;
  row[Field::in_stock] = "InStock";
  if (!there.empty()) rows.push_back(std::move(row));
  second[Field::size] = gone;
  second[Field::in_stock] = "OutOfStock";
  if (!rows.empty()) second.doubt.reset();
  rows.push_back(std::move(second));
  return rows;
}

}  // namespace rangebook
