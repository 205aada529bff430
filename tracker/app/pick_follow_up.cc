// The lines of a shop and each comparison are read once for all picks.
#include "tracker/app/pick_follow_up.h"

#include <algorithm>
#include <utility>

#include "tracker/app/line_search.h"
#include "tracker/pick_follow.h"
#include "tracker/reference.h"

namespace rangebook {
namespace {

bool is_unchanged(const HistoryCapture& then, const HistoryCapture& now) {
  return then.line && now.line && then.line->listing.card == now.line->listing.card &&
         then.line->listing.offers == now.line->listing.offers;
}

}  // namespace

FollowedPick FollowUp::of(const Pick& pick) {
  auto& kept = shops_[pick.shop];
  if (!kept) kept = std::make_unique<ShopLines>(book_, pick.shop);
  ShopLines& lines = *kept;
  const Roll& roll = lines.roll();
  const auto at = sighting_on(roll, pick.line, pick.seen_on);
  if (!at || roll.captures[at->capture].info.on != pick.seen_on) {
    FollowedPick lost = follow_pick(roll.shop, pick, {});
    const LineGlimpse glimpse = lines.glimpse(pick.line, pick.seen_on);
    lost.code = glimpse.code;
    lost.name = glimpse.name;
    if (!roll.captures.empty()) lost.latest = roll.captures.back().info;
    return lost;
  }
  const Identities& all = lines.identities();
  const LineIdentity& line = all.lines[all.at(*at)];
  const auto captures = captures_of(lines, line, *at, until_);
  FollowedPick followed = follow_pick(roll.shop, pick, captures);
  followed.reference = lines.line_reference(line).substr(0, kReferenceSigns);
  if (!followed.now) return followed;
  const auto by = std::find_if(captures.begin(), captures.end(), [&](const HistoryCapture& each) {
    return each.capture.id == followed.by->id;
  });
  if (is_unchanged(captures.front(), *by)) return followed;
  if (const ChangeSet* set = between(captures.front().capture, by->capture)) {
    add_changes(followed, *set);
  }
  return followed;
}

const ChangeSet* FollowUp::between(const CaptureInfo& from, const CaptureInfo& to) {
  const auto [entry, is_new] = sets_.try_emplace({from.id, to.id});
  if (is_new) {
    auto set = run_comparison(book_, {from.shop, std::to_string(from.id), std::to_string(to.id)});
    if (auto* compared = std::get_if<ChangeSet>(&set)) entry->second = std::move(*compared);
  }
  return entry->second ? &*entry->second : nullptr;
}

}  // namespace rangebook
