// A text of everything, hashed.
#include "tracker/identity/fingerprint.h"

#include <fmt/format.h>
#include <xxhash.h>

#include <algorithm>
#include <map>
#include <set>
#include <vector>

namespace rangebook {
namespace {

bool seen_by(const Roll& roll, LineId line, std::uint32_t place) {
  for (std::uint32_t capture = 0; capture <= place; ++capture) {
    if (row_of(roll.captures[capture], line)) return true;
  }
  return false;
}

/// Lines that decisions tie together, yes or no, each with one line that stands for all of them.
std::map<LineId, LineId> decided_groups(const std::vector<LinkDecision>& decisions) {
  std::map<LineId, LineId> leader;
  const auto find = [&](LineId line) {
    while (leader.try_emplace(line, line).first->second != line) line = leader[line];
    return line;
  };
  for (const LinkDecision& decision : decisions) {
    const LineId a = find(decision.a);
    const LineId b = find(decision.b);
    leader[std::max(a, b)] = std::min(a, b);
  }
  std::map<LineId, LineId> groups;
  for (const auto& [line, next] : leader) groups[line] = find(next);
  return groups;
}

/// Groups of which something can already be said: two lines seen, or one that stands against
/// itself.
std::set<LineId> groups_at_work(const Roll& roll, const std::map<LineId, LineId>& groups,
                                std::uint32_t place) {
  std::map<LineId, int> seen;
  for (const auto& [line, group] : groups) {
    if (seen_by(roll, line, place)) ++seen[group];
  }
  for (const LinkDecision& decision : roll.decisions) {
    if (decision.a == decision.b) ++seen[groups.at(decision.a)];
  }
  std::set<LineId> at_work;
  for (const auto& [group, lines] : seen) {
    if (lines > 1) at_work.insert(group);
  }
  return at_work;
}

std::string end_text(const Roll& roll, LineId line, Day on, std::uint32_t place) {
  const auto at = sighting_on(roll, line, on);
  return fmt::format("{}@{}/{}", line, to_string(on),
                     at && at->capture <= place ? std::to_string(at->capture) : "-");
}

std::vector<std::string> decision_texts(const Roll& roll, std::uint32_t place) {
  const auto groups = decided_groups(roll.decisions);
  const auto at_work = groups_at_work(roll, groups, place);
  std::vector<std::string> texts;
  for (const LinkDecision& each : roll.decisions) {
    if (!at_work.contains(groups.at(each.a))) continue;
    texts.push_back(fmt::format("{} {} {}\n", end_text(roll, each.a, each.a_on, place),
                                end_text(roll, each.b, each.b_on, place), each.same));
  }
  std::sort(texts.begin(), texts.end());
  return texts;
}

}  // namespace

std::string finds_fingerprint(const Roll& roll, std::uint32_t place, const LikenessOptions& options,
                              std::string_view program) {
  std::string text = fmt::format(
      "{}\n{}\n{} {} {} {}\n", program, static_cast<int>(roll.shop.sizes), options.link_from,
      options.ask_from, options.candidates.entries, options.candidates.kept);
  for (std::uint32_t capture = 0; capture <= place; ++capture) {
    text += fmt::format("{} {}\n", roll.captures[capture].info.id,
                        to_string(roll.captures[capture].info.on));
  }
  for (const std::string& decision : decision_texts(roll, place)) text += decision;
  const auto hash = XXH3_128bits(text.data(), text.size());
  return fmt::format("{:016x}{:016x}", hash.high64, hash.low64);
}

}  // namespace rangebook
