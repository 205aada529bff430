// What a comparison has to say about two captures whose lines are known by their styles: worked out
// from the plain facts, by the definitions of schema/FORMAT.md and section 6 of the agreed design,
// without any code of the product.
#pragma once

#include <map>
#include <set>
#include <string>

#include "tests/evaluate/range_model.h"

namespace rangebook::evaluate {

/// One change that has to be said: kind, style, and what it is about (amounts, labels, names).
struct Expected {
  std::string kind;
  int style = 0;
  std::string what;

  auto operator<=>(const Expected&) const = default;
};

struct Truth {
  std::set<Expected> changes;
  /// Styles that stand as several lines on one side: a colourway split off or merged. Only the
  /// linking of these is judged, not the wording of their changes.
  std::set<int> split;
  /// Names that differ in letter case and blanks only: saying so or not are both right.
  std::set<int> respelt;
};

Truth truth_of(const Seasons& seasons);

}  // namespace rangebook::evaluate
