// The links of two captures, taken from the lines through all captures.
#pragma once

#include <string>

#include "schema/identity.h"
#include "schema/link.h"
#include "schema/snapshot.h"
#include "tracker/identity/roll.h"

namespace rangebook {

/// Which row of one capture is which of the other. Sentences of lines that were linked more than
/// once in between name the seasons. `from` and `to` are the snapshots of the captures at these
/// places of the roll.
struct CapturePair {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  const Snapshot& before;
  const Snapshot& after;
};
LinkSet links_between(const Roll& roll, const Identities& identities, const CapturePair& pair);

/// Why a sighting of a line is the line of another one: their code, or the links between them.
/// `card` is what the later one says of itself.
std::string link_sentence(const Roll& roll, const LineIdentity& line, SightingAt then,
                          SightingAt now, const LineCard& card);

}  // namespace rangebook
