// Finding a category's figures of both captures, currency by currency.
#pragma once

#include <string_view>
#include <vector>

#include "schema/change.h"

namespace rangebook {

/// Prices of a category in one currency on both sides; either may be missing.
struct LadderPair {
  const CategorySummary* summary = nullptr;
  const PriceLadder* then = nullptr;
  const PriceLadder* now = nullptr;

  Currency currency() const { return now != nullptr ? now->currency : then->currency; }
};

/// In the order of currencies of the later capture, then those only the earlier one has.
std::vector<LadderPair> ladder_pairs(const CategorySummary& summary);

/// The summaries of `set` for this category, or all of them where `category` is empty.
std::vector<const CategorySummary*> summaries_of(const ChangeSet& set, std::string_view category);

/// The findings about lines of this category, or all of them where `category` is empty or `all`.
std::vector<const WasPriceFinding*> findings_of(const ChangeSet& set, std::string_view category);

}  // namespace rangebook
