// Changes of a line's size range: beyond its ends, inside it, and by fit range.
#pragma once

#include "schema/change.h"
#include "tracker/coverage.h"
#include "tracker/interpreter.h"
#include "tracker/line_pair.h"

namespace rangebook {

/// Sizes of one group of a run as a fact.
SizeFact size_fact(const SizeRun& run, const SizeGroup& group);

/// Emits sizes-widened, sizes-narrowed, size-gap-filled, size-gap-opened for each system and fit
/// range both captures have, and fit-range-added, fit-range-dropped. Says nothing where a capture
/// does not state every size, where labels of no known system differ, and in the direction a
/// refused row may explain.
void diff_sizes(const LinePair& pair, PairChanges& changes, SilenceLog& silences);

}  // namespace rangebook
