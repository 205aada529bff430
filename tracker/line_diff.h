// Everything that changed in one linked line.
#pragma once

#include <optional>
#include <string_view>

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

/// The categories a linked line counts under in each capture. They differ only where the shop moved
/// it: a source that does not file the line, or files it less closely, has not moved it.
struct CategoryPair {
  std::string_view then;
  std::string_view now;
};
CategoryPair categories_of(const LinePair& pair, Interpreter& interpreter);

}  // namespace rangebook
