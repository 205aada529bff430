// What the stylist decided about lines, worked out to its consequences.
#pragma once

#include <map>
#include <set>
#include <utility>
#include <vector>

#include "tracker/linker.h"

namespace rangebook {

/// Decisions as groups of lines that are the same style. A decision carries over: if 1 and 2 are
/// the same and 2 and 3 are not, 1 and 3 are not. A no between two lines holds even where a chain
/// of yeses joins them.
class DecisionBook {
 public:
  explicit DecisionBook(const std::vector<LinkDecision>& decisions);

  bool empty() const { return leader_.empty(); }
  /// The line that stands for all lines said to be the same as `id`; `id` itself if none is.
  LineId group_of(LineId id) const;
  bool forbids(LineId a, LineId b) const;

 private:
  LineId find(LineId id) const;
  void join(LineId a, LineId b);

  std::map<LineId, LineId> leader_;  // chains end at a line that leads itself: the smallest id
  std::set<std::pair<LineId, LineId>> apart_;         // as decided
  std::set<std::pair<LineId, LineId>> groups_apart_;  // as leaders
};

}  // namespace rangebook
