// Telling of colourways that became lines, and lines that became colourways, where their changes
// stand.
#pragma once

#include <string>
#include <vector>

#include "schema/change.h"
#include "tracker/colour_moves.h"

namespace rangebook {

/// The two captures and how their lines are linked.
struct LinkedCaptures {
  const Snapshot& from;
  const Snapshot& to;
  const LinkSet& links;
};

/// Finds the moves, adds to the changes of both lines how they bear on each other, and gives a
/// sentence for each kind of move there is.
std::vector<std::string> tell_colour_moves(const LinkedCaptures& captures, Interpreter& interpreter,
                                           std::vector<Change>& changes);

}  // namespace rangebook
