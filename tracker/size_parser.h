// Reading size labels, ranges and sets.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "schema/size.h"

namespace rangebook {

struct SizeProblem {
  std::string what;        ///< one sentence
  std::string how_to_fix;  ///< one sentence
};

/// The labels a size cell stands for: `12` is one, `8|10|12` a list, `8-20`, `XS-XL` a range that
/// expands in its size system (UK 8-20 has 8, 10, .. 20), `12-14` or `S/M` beside... one dual size
/// when the set or the step says so. Labels come back verbatim (trimmed). A range that cannot be
/// expanded (end below start, mixed systems, unknown labels) is a problem.
std::variant<std::vector<std::string>, SizeProblem> expand_sizes(std::string_view cell,
                                                                 SizeSystem shop_default);

/// What each label means, in the order given. Works on the whole set of a line, since a lone label
/// can be ambiguous: the shop's default decides bare numbers, words and marks in the labels
/// ("UK 12", "14W", "10 Petite", "12L", "EU 38") decide over it.
std::vector<Size> interpret_sizes(std::span<const std::string> labels, SizeSystem shop_default);

/// `a` comes before `b` in lists: by system, fit, position, then label.
bool size_less(const Size& a, const Size& b);

}  // namespace rangebook
