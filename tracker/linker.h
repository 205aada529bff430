// The linker: which line of one snapshot is which line of the other. A pure function of values.
#pragma once

#include <functional>
#include <vector>

#include "schema/link.h"
#include "schema/snapshot.h"

namespace rangebook {

/// A decision of the stylist about two lines, by their lasting ids. Wins over every rule. The days
/// on which both were seen only matter where a line stands against itself.
struct LinkDecision {
  LineId a = 0;
  LineId b = 0;
  bool same = true;
  Day a_on{};
  Day b_on{};

  bool operator==(const LinkDecision&) const = default;
};

/// True for decisions about the same two lines, or about one line on the same two days.
inline bool same_pair(const LinkDecision& x, const LinkDecision& y) {
  const bool straight = x.a == y.a && x.b == y.b;
  if (!straight && !(x.a == y.b && x.b == y.a)) return false;
  return x.a != x.b || (x.a_on == y.a_on && x.b_on == y.b_on);
}

/// The lines that exact evidence left over, with what it found.
struct Leftovers {
  const Snapshot& from;
  const Snapshot& to;
  const std::vector<std::size_t>& only_from;  ///< ascending
  const std::vector<std::size_t>& only_to;    ///< ascending
  const std::vector<Link>& known;  ///< by `from`; examples of how a line looks a season later
  std::function<bool(std::size_t, std::size_t)> forbidden;  ///< the stylist said no to this pair
};

/// What a matcher finds. No line stands twice.
struct Matches {
  std::vector<Link> links;
  std::vector<Link> ask;  ///< likely, but not enough to link unseen
};

/// Finds further pairs among the lines that exact evidence left over. The seam for linking by
/// likeness.
class Matcher {
 public:
  virtual ~Matcher() = default;
  virtual Matches match(const Leftovers& left) const = 0;
};

/// Links by exact evidence, strongest first: stylist's yes, line code, GTIN, group id, address;
/// each step only among lines the earlier steps left over, and only where the evidence points to
/// exactly one line on each side. The rest goes to `matcher`; without one, lines without any code
/// are linked by equal names (authority `rule`), unless their addresses or compositions contradict.
/// A stylist's no is never linked or asked again.
LinkSet link_lines(const Snapshot& from, const Snapshot& to,
                   const std::vector<LinkDecision>& decisions, const Matcher* matcher);

}  // namespace rangebook
