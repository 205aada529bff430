// Whether a decision can stand beside those already made.
#pragma once

#include <optional>
#include <vector>

#include "tracker/linker.h"

namespace rangebook {

/// The decisions that together say the opposite of a proposed one: a chain from its first line to
/// its second. All say yes, but for one no where the proposed decision is a yes.
using Contradiction = std::vector<LinkDecision>;

/// The shortest such chain; nothing when the decision can stand. An earlier decision about the very
/// same two lines does not count: it is changed, not contradicted.
std::optional<Contradiction> contradiction_to(const LinkDecision& proposed,
                                              const std::vector<LinkDecision>& decisions);

}  // namespace rangebook
