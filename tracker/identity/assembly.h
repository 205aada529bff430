// From links found capture by capture to lines through all of them.
#pragma once

#include <vector>

#include "schema/identity.h"
#include "tracker/identity/roll.h"

namespace rangebook {

/// The lines of the first `finds.size()` captures of the roll. A pure function of the set of
/// captures, what was found in each and the decisions: the order in which captures were taken in
/// does not matter.
///
/// Codes come first: a code that runs through several captures is one line. Then links, the
/// stylist's before all others, each only if it contradicts nothing: two lines that stand in one
/// capture are two, whatever a rule said of them in an earlier season, and a no of the stylist
/// holds for all sightings of both lines.
Identities assemble(const Roll& roll, const std::vector<CaptureFinds>& finds);

}  // namespace rangebook
