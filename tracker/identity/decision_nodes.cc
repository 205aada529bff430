// Decisions about lines, seen as decisions about nodes.
#include "tracker/identity/decision_nodes.h"

#include <map>

namespace rangebook {
namespace {

class Nodes {
 public:
  Nodes(const Roll& roll, const NodeOf& node_of) : roll_(roll), node_of_(node_of) {}

  std::optional<LineId> of(LineId line, Day day) {
    const auto sighting = sighting_on(roll_, line, day);
    if (!sighting) return elsewhere({line, std::nullopt});
    if (const auto node = node_of_(*sighting)) return node;
    const bool unsure = is_unsure(roll_, line);
    return elsewhere({line, unsure ? std::optional(*sighting) : std::nullopt});
  }

 private:
  /// A line that is not at hand; of an unsure one each sighting on its own.
  using Absent = std::pair<LineId, std::optional<SightingAt>>;

  LineId elsewhere(const Absent& absent) {
    const auto next = -static_cast<LineId>(absent_.size()) - 1;
    return absent_.try_emplace(absent, next).first->second;
  }

  const Roll& roll_;
  const NodeOf& node_of_;
  std::map<Absent, LineId> absent_;
};

}  // namespace

std::vector<LinkDecision> decisions_between(const Roll& roll, const NodeOf& node_of) {
  std::vector<LinkDecision> decisions;
  Nodes nodes(roll, node_of);
  for (const LinkDecision& decision : roll.decisions) {
    const auto a = nodes.of(decision.a, decision.a_on);
    const auto b = nodes.of(decision.b, decision.b_on);
    if (a && b && *a != *b) decisions.push_back({*a, *b, decision.same, {}, {}});
  }
  return decisions;
}

}  // namespace rangebook
