// Everything that changed in one linked line.
#pragma once

#include <optional>

#include "tracker/coverage.h"
#include "tracker/interpreter.h"
#include "tracker/line_pair.h"
#include "tracker/price_diff.h"

namespace rangebook {

/// Compares both states of a line: name, code, composition, category, then its offers. Facts that
/// only one side states are never a change. Parts with equal hashes are skipped. Returns what the
/// line adds to a price index.
std::optional<LineIndexPrices> diff_line(const LinePair& pair, Interpreter& interpreter,
                                         PairChanges& changes, SilenceLog& silences);

}  // namespace rangebook
