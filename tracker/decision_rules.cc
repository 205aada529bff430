// A search, breadth first, through lines joined by decisions.
#include "tracker/decision_rules.h"

#include <algorithm>
#include <deque>
#include <map>
#include <utility>

namespace rangebook {
namespace {

/// A line, and whether a no stands on the way to it.
using Place = std::pair<LineId, bool>;

struct Step {
  Place from;
  const LinkDecision* decision = nullptr;
};

class Search {
 public:
  Search(const LinkDecision& proposed, const std::vector<LinkDecision>& decisions) {
    for (const LinkDecision& decision : decisions) {
      if (same_pair(decision, proposed) || decision.a == decision.b) continue;
      of_line_[decision.a].push_back(&decision);
      of_line_[decision.b].push_back(&decision);
    }
  }

  std::optional<Contradiction> run(const Place& start, const Place& goal) {
    steps_[start] = {};
    for (std::deque<Place> open{start}; !open.empty(); open.pop_front()) {
      const Place at = open.front();
      if (at == goal) return way_to(goal, start);
      for (const LinkDecision* decision : of_line_[at.first]) {
        if (!decision->same && at.second) continue;  // a second no says nothing
        const LineId other = decision->a == at.first ? decision->b : decision->a;
        const Place next{other, at.second || !decision->same};
        if (steps_.try_emplace(next, Step{at, decision}).second) open.push_back(next);
      }
    }
    return std::nullopt;
  }

 private:
  Contradiction way_to(Place at, const Place& start) const {
    Contradiction way;
    while (at != start) {
      const Step& step = steps_.at(at);
      way.push_back(*step.decision);
      at = step.from;
    }
    std::reverse(way.begin(), way.end());
    return way;
  }

  std::map<LineId, std::vector<const LinkDecision*>> of_line_;
  std::map<Place, Step> steps_;
};

}  // namespace

std::optional<Contradiction> contradiction_to(const LinkDecision& proposed,
                                              const std::vector<LinkDecision>& decisions) {
  if (proposed.a == proposed.b) return std::nullopt;
  return Search(proposed, decisions).run({proposed.a, false}, {proposed.b, proposed.same});
}

}  // namespace rangebook
