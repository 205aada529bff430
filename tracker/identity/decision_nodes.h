// The stylist's decisions as decisions about nodes: whole lines or single rows, whichever are at
// hand. Decisions name a line and a day; what that is depends on how far the lines are known.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "tracker/identity/roll.h"

namespace rangebook {

/// The node of a sighting; nothing for one that is not at hand, such as of a later capture.
using NodeOf = std::function<std::optional<LineId>(SightingAt)>;

/// Decisions between nodes. A sighting that is not at hand becomes a node of its own (numbered
/// downwards from -1), since what was decided about it may tie two others together.
std::vector<LinkDecision> decisions_between(const Roll& roll, const NodeOf& node_of);

}  // namespace rangebook
