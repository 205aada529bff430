// Reading fabric compositions as labels and pages write them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "schema/composition.h"

namespace rangebook {

/// Reads `65% Cotton, 35% Polyester`, `Main: 100% viscose. Lining: 100% polyester`, `CO 65 PES 35`.
/// Nothing when no share of any fibre can be read. Shares that do not sum to 100 are kept as read:
/// see CompositionPart::sums_to_100.
std::optional<Composition> parse_composition(std::string_view text);

}  // namespace rangebook
