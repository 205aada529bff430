// Walks back from the latest capture to the first that looked.
#include "tracker/pick_follow.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace rangebook {
namespace {

/// A capture of the picks looked for what was picked by then.
Presence presence_of(const HistoryEntry& entry, const Pick& pick) {
  const bool of_picks =
      entry.capture.scope.kind == Scope::Kind::picks && pick.on <= entry.capture.on;
  return entry.presence == Presence::not_looked && of_picks ? Presence::absent : entry.presence;
}

/// Sizes of which no variant can be had: in every colour, or in those that all state it.
std::vector<SoldOutSize> sold_out_sizes(const SeenLine& line, const LineOffers& offers) {
  std::map<std::string, std::set<std::string>> out;
  std::map<std::string, std::size_t> others;
  for (const Offer& offer : offers.offers) {
    const std::string& size = offers.sizes[offer.size];
    if (offer.stock == Stock::sold_out) {
      out[size].insert(offers.colours[offer.colour]);
    } else {
      ++others[size];
    }
  }
  std::vector<SoldOutSize> found;
  const auto add = [&](const std::string& size) {
    const auto at = out.find(size);
    if (at == out.end()) return;
    SoldOutSize sold{size, {}};
    if (others.contains(size)) sold.colours.assign(at->second.begin(), at->second.end());
    found.push_back(std::move(sold));
    out.erase(at);
  };
  for (const SizeFact& fact : line.sizes) {
    for (const std::string& label : fact.labels) add(label);
  }
  while (!out.empty()) add(out.begin()->first);
  return found;
}

PickState state_of(Presence presence) {
  switch (presence) {
    case Presence::seen:
      return PickState::there;
    case Presence::absent:
      return PickState::gone;
    case Presence::not_looked:
      return PickState::not_looked;
    case Presence::refused:
      return PickState::refused;
  }
  return PickState::not_looked;
}

}  // namespace

FollowedPick follow_pick(const Shop& shop, const Pick& pick,
                         const std::vector<HistoryCapture>& captures) {
  FollowedPick followed;
  followed.pick = pick;
  followed.shop = shop;
  if (captures.empty()) return followed;
  followed.id = captures.front().line->id;
  const auto all = tell_history(shop, captures);
  followed.latest = all.back().capture;
  followed.then = all.front().line;
  std::size_t by = all.size() - 1;
  while (by > 0 && presence_of(all[by], pick) == Presence::not_looked) --by;
  const Presence presence = by > 0 ? presence_of(all[by], pick) : Presence::not_looked;
  followed.state = state_of(presence);
  if (by > 0) followed.by = all[by].capture;
  const LineOffers& last_offers = captures[all[by].line ? by : 0].line->listing.offers;
  const SeenLine& last = all[by].line ? *all[by].line : *all[0].line;
  followed.code = last.card.line_code;
  followed.name = last.card.name;
  if (followed.state == PickState::there || by == 0) {
    followed.sold_out = sold_out_sizes(last, last_offers);
  }
  if (followed.state != PickState::there) return followed;
  followed.now = all[by].line;
  followed.was_away = std::any_of(
      all.begin(), all.begin() + static_cast<std::ptrdiff_t>(by),
      [&](const HistoryEntry& entry) { return presence_of(entry, pick) == Presence::absent; });
  return followed;
}

void add_changes(FollowedPick& followed, const ChangeSet& between) {
  for (const Change& change : between.changes) {
    if (!change.line || change.line->id != followed.id) continue;
    followed.changes.push_back(change);
    if (change.kind != ChangeKind::colour_added || !change.after) continue;
    if (const auto* fact = std::get_if<ColourFact>(&*change.after)) {
      followed.new_colours.push_back(fact->colour);
    }
  }
}

}  // namespace rangebook
