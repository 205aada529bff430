// Decisions of the stylist as groups and prohibitions.
#include "tracker/decision_book.h"

#include <algorithm>

namespace rangebook {

DecisionBook::DecisionBook(const std::vector<LinkDecision>& decisions) {
  for (const LinkDecision& decision : decisions) {
    leader_.try_emplace(decision.a, decision.a);
    leader_.try_emplace(decision.b, decision.b);
    if (decision.same) join(decision.a, decision.b);
  }
  for (const LinkDecision& decision : decisions) {
    if (decision.same) continue;
    apart_.insert(std::minmax(decision.a, decision.b));
    groups_apart_.insert(std::minmax(find(decision.a), find(decision.b)));
  }
}

LineId DecisionBook::group_of(LineId id) const { return leader_.contains(id) ? find(id) : id; }

bool DecisionBook::forbids(LineId a, LineId b) const {
  if (apart_.empty()) return false;
  if (apart_.contains(std::minmax(a, b))) return true;
  const LineId group_a = group_of(a);
  const LineId group_b = group_of(b);
  return group_a != group_b && groups_apart_.contains(std::minmax(group_a, group_b));
}

LineId DecisionBook::find(LineId id) const {
  for (LineId next = leader_.at(id); next != id; next = leader_.at(id)) id = next;
  return id;
}

void DecisionBook::join(LineId a, LineId b) {
  a = find(a);
  b = find(b);
  leader_[std::max(a, b)] = std::min(a, b);
}

}  // namespace rangebook
