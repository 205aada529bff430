// Products of feeds to rows: fields by the names of schema/tables/fields.tsv, one row for each
// variant.
#pragma once

#include <array>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "importers/feed_names.h"
#include "importers/feed_node.h"
#include "schema/raw_row.h"

namespace rangebook {

/// A product that would give more rows is cut short.
inline constexpr std::size_t kMaxRowsPerItem = 10'000;

struct FeedRow {
  std::array<std::string, kFieldCount> cells;

  std::string& operator[](Field field) { return cells[static_cast<std::size_t>(field)]; }
  const std::string& operator[](Field field) const {
    return cells[static_cast<std::size_t>(field)];
  }
};

/// The rows of one product. What the product says holds for all its variants unless they say
/// otherwise. Lists of sizes and colours are joined with `|`; a code inside a variant is the
/// variant's; beside a sale price, `price` is the full price. Names are added to `names`.
std::vector<FeedRow> feed_rows(const FeedNode& item, FeedNames& names);

/// How many different fields the parts of a node name directly; nothing when none of them is the
/// name of a line or none is about an article (code, price, size, colour, stock, picture, address).
/// `choices` say what some of them mean.
std::optional<std::size_t> product_fields(const std::set<std::string>& part_names,
                                          const FeedChoices& choices);

}  // namespace rangebook
