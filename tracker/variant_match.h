// Which variant of a line is which in the other capture: same colour, same size.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/listing.h"
#include "tracker/interpreter.h"

namespace rangebook {

/// A variant both captures have.
struct CommonVariant {
  const Offer* before = nullptr;
  const Offer* after = nullptr;
};

/// Variants with equal colour and size on both sides. Colours are equal by label, else by colour
/// key; sizes by label, else by position. Each variant stands in at most one pair. Pointers go into
/// the arguments.
std::vector<CommonVariant> common_variants(const LineOffers& before, const SizeRun& sizes_before,
                                           const LineOffers& after, const SizeRun& sizes_after,
                                           Interpreter& interpreter);

/// For each of the earlier side's colours or sizes the index of its equal on the later side.
using IndexMap = std::vector<std::optional<std::uint16_t>>;
IndexMap match_colours(const std::vector<std::string>& before,
                       const std::vector<std::string>& after, Interpreter& interpreter);
IndexMap match_sizes(const LineOffers& before, const SizeRun& sizes_before, const LineOffers& after,
                     const SizeRun& sizes_after);

}  // namespace rangebook
