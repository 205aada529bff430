// What the user says about the names of a feed: by the name alone (`price`), or by the way to it
// from the product (`variants.price`).
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "importers/header_words.h"
#include "schema/table_options.h"

namespace rangebook {

class FeedChoices {
 public:
  FeedChoices() = default;
  explicit FeedChoices(std::vector<ColumnChoice> choices);

  bool empty() const { return choices_.empty(); }
  /// What is said of the part called `name` at `path`; null if nothing. The way decides before the
  /// name alone.
  const ColumnChoice* find(std::string_view path, std::string_view name) const;
  /// Some name is said to be this field: no other name is taken for it unasked.
  bool takes(Field field) const { return fields_.contains(field); }
  /// What the names among these are said to be.
  std::set<Field> fields_of(const std::set<std::string>& names) const;
  const std::vector<ColumnChoice>& all() const { return choices_; }
  /// Those of several names: `pricing.retail.amount`.
  const std::vector<ColumnChoice>& ways() const { return ways_; }

 private:
  std::vector<ColumnChoice> choices_;
  std::vector<std::string> folded_;  ///< of each choice
  std::vector<ColumnChoice> ways_;
  std::set<Field> fields_;
};

/// The meaning that a choice gives; nothing where it is not to be read.
std::optional<ColumnMeaning> meaning_of(const ColumnChoice& choice);

/// The names of a way: `variants.price` -> variants, price.
std::vector<std::string> names_of_way(std::string_view way);

}  // namespace rangebook
