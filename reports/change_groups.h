// Picking and counting changes for the sentences and tables of a brief.
#pragma once

#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include "reports/phrase.h"
#include "schema/change.h"

namespace rangebook {

using ChangeList = std::vector<const Change*>;

/// The changes of these kinds in the order of the set.
ChangeList of_kinds(const ChangeSet& set, std::initializer_list<ChangeKind> kinds);

/// How many different lines the changes are about.
std::size_t lines_in(const ChangeList& changes);

/// Category slugs with their number of lines, most lines first, then by slug.
std::vector<std::pair<std::string, std::size_t>> lines_by_category(const ChangeList& changes);

/// `a`, `a and b`, `a, b and c`.
Phrase joined(const std::vector<Phrase>& items);

/// The shape of a side; nullptr where the side is absent or of another shape.
template <typename Shape>
const Shape* fact_of(const std::optional<Fact>& fact) {
  return fact ? std::get_if<Shape>(&*fact) : nullptr;
}

/// Change of the amount in tenths of a percent; nothing without two comparable prices.
std::optional<std::int64_t> price_move(const Change& change);

/// Largest move first whatever its sign; equal moves stay in the order of the set.
void sort_by_move(ChangeList& changes);

/// The summary of `all`, or of any category; nullptr if the set has none.
const CategorySummary* summary_of(const ChangeSet& set, std::string_view category);

}  // namespace rangebook
