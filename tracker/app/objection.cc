// Why a decision cannot stand beside the captures and the decisions before it.
#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "tracker/app/shop_lines.h"
#include "tracker/decision_rules.h"
#include "tracker/reference.h"

namespace rangebook {
namespace {

std::string name_of(const LineGlimpse& line) {
  if (line.code.empty()) return fmt::format("\"{}\"", line.name);
  return line.name.empty() ? line.code : fmt::format("\"{}\" ({})", line.name, line.code);
}

std::string said(ShopLines& lines, const LinkDecision& decision) {
  return fmt::format("{} and {} are {} ({})", name_of(lines.glimpse(decision.a, decision.a_on)),
                     name_of(lines.glimpse(decision.b, decision.b_on)),
                     decision.same ? "the same line" : "two lines",
                     lines.pair_reference(decision).substr(0, kReferenceSigns));
}

std::string contradiction_text(ShopLines& lines, const Contradiction& chain, bool same) {
  std::string text = "You said that ";
  for (std::size_t i = 0; i < chain.size(); ++i) {
    if (i > 0) text += i + 1 < chain.size() ? ", that " : ", and that ";
    text += said(lines, chain[i]);
  }
  return text +
         fmt::format(
             ". So these cannot be {}. Take one of those back first: rangebook links undo {}",
             same ? "one line" : "two lines",
             lines.pair_reference(chain.back()).substr(0, kReferenceSigns));
}

/// A line as far as a decision reaches: of a code all captures, of a name the one looked at.
struct Reach {
  LineId line = 0;
  Day on{};
};

bool same_reach(const Roll& roll, const Reach& x, const Reach& y) {
  return x.line == y.line && (!is_unsure(roll, x.line) || x.on == y.on);
}

/// All that yeses tie to one end of a decision, itself first.
std::vector<Reach> tied_to(const Roll& roll, const Reach& end, const LinkDecision& without) {
  std::vector<Reach> tied{end};
  for (std::size_t i = 0; i < tied.size(); ++i) {
    for (const LinkDecision& decision : roll.decisions) {
      if (!decision.same || (decision.a == without.a && decision.b == without.b)) continue;
      Reach a{decision.a, decision.a_on};
      Reach b{decision.b, decision.b_on};
      if (!same_reach(roll, a, tied[i])) std::swap(a, b);
      if (!same_reach(roll, a, tied[i])) continue;
      const bool known = std::any_of(tied.begin(), tied.end(),
                                     [&](const Reach& each) { return same_reach(roll, each, b); });
      if (!known) tied.push_back(b);
    }
  }
  return tied;
}

bool stands_in(const Roll& roll, const Reach& line, std::uint32_t capture) {
  if (is_unsure(roll, line.line)) {
    const auto at = sighting_on(roll, line.line, line.on);
    return at && at->capture == capture;
  }
  return row_of(roll.captures[capture], line.line).has_value();
}

/// Two lines of one capture are two, so nothing may make them one.
std::optional<std::string> side_by_side(ShopLines& lines, const LinkDecision& proposed) {
  const Roll& roll = lines.roll();
  const auto of_a = tied_to(roll, {proposed.a, proposed.a_on}, proposed);
  const auto of_b = tied_to(roll, {proposed.b, proposed.b_on}, proposed);
  for (std::uint32_t capture = 0; capture < roll.captures.size(); ++capture) {
    for (const Reach& x : of_a) {
      for (const Reach& y : of_b) {
        if (!stands_in(roll, x, capture) || !stands_in(roll, y, capture)) continue;
        const CaptureInfo& info = roll.captures[capture].info;
        return fmt::format("{} and {} stand side by side in {} ({}), so they are two lines.",
                           name_of(lines.glimpse(x.line, info.on)),
                           name_of(lines.glimpse(y.line, info.on)), info.season,
                           to_string(info.on));
      }
    }
  }
  return std::nullopt;
}

}  // namespace

std::string objection_to(ShopLines& lines, const LinkDecision& proposed) {
  if (const auto chain = contradiction_to(proposed, lines.roll().decisions)) {
    return contradiction_text(lines, *chain, proposed.same);
  }
  if (!proposed.same || proposed.a == proposed.b) return {};
  return side_by_side(lines, proposed).value_or(std::string());
}

}  // namespace rangebook
