// The linker: which line of one snapshot is which line of the other. A pure function of values.
#pragma once

#include <optional>
#include <vector>

#include "schema/link.h"
#include "schema/snapshot.h"

namespace rangebook {

/// A decision of the stylist about two lines, by their lasting ids. Wins over every rule.
struct LinkDecision {
  LineId a = 0;
  LineId b = 0;
  bool same = true;
};

/// Finds further pairs among the lines that exact evidence left over. The seam for linking by
/// likeness: the default finds none.
class Matcher {
 public:
  virtual ~Matcher() = default;
  /// Pairs of indices out of `only_from` and `only_to`; each index at most once.
  virtual std::vector<Link> match(const Snapshot& from, const Snapshot& to,
                                  const std::vector<std::size_t>& only_from,
                                  const std::vector<std::size_t>& only_to) const = 0;
};

/// Links by exact evidence, strongest first: stylist's yes, line code, GTIN, group id, address;
/// each step only among lines the earlier steps left over, and only where the evidence points to
/// exactly one line on each side. Then lines without any code by equal names (authority `rule`),
/// unless their addresses or compositions contradict, and at last `matcher`, if any. A stylist's no
/// is never linked.
LinkSet link_lines(const Snapshot& from, const Snapshot& to,
                   const std::vector<LinkDecision>& decisions, const Matcher* matcher);

}  // namespace rangebook
