// Colourways that became lines of their own, and lines that became colourways. A shop that splits
// `Maya Dress` into `Maya Dress Navy` and `Maya Dress Red` has no new dress, and dropped no colour.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "schema/link.h"
#include "schema/snapshot.h"
#include "tracker/interpreter.h"

namespace rangebook {

/// A colour that a line of several colours had in one capture, and a line that has it, and nothing
/// else, in the other.
struct ColourMove {
  std::size_t whole = 0;  ///< row of the line of several colours
  std::size_t part = 0;   ///< row of the other line, in the other capture
  std::string colour;     ///< as the whole line words it
  std::string evidence;   ///< why it is the same colourway

  bool operator==(const ColourMove&) const = default;
};

struct ColourMoves {
  std::vector<ColourMove> split;   ///< whole in the earlier capture, part in the later one
  std::vector<ColourMove> merged;  ///< whole in the later capture, part in the earlier one
};

/// Only lines that `links` leaves alone can be parts, and only colours that the whole line has on
/// one side alone. Taken for the same: barcodes in common; or the same name without its colours
/// with the same composition, or where that is not stated the same price, if one line only fits.
ColourMoves find_colour_moves(const Snapshot& from, const Snapshot& to, const LinkSet& links,
                              Interpreter& interpreter);

}  // namespace rangebook
