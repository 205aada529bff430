// Laws of following picks up: it says of a line what the differ says of the same two captures, and
// calls nothing gone that the differ does not call dropped. RANGEBOOK_SEED runs other ranges.
#include <gtest/gtest.h>

#include "tests/properties/random_range.h"
#include "tracker/differ.h"
#include "tracker/linker.h"
#include "tracker/pick_follow.h"

namespace rangebook {
namespace {

using testing::Random;

constexpr int kRounds = 15;

std::optional<LineState> line_in(const Snapshot& snapshot, LineId id) {
  for (const LineState& line : snapshot.lines) {
    if (line.id == id) return line;
  }
  return std::nullopt;
}

/// Lines are told apart by their ids: equal ids are equal codes in these ranges.
FollowedPick follow(const Snapshot& from, const Snapshot& to, LineId id, const ChangeSet& set) {
  Pick pick;
  pick.line = id;
  pick.on = pick.seen_on = from.capture.on;
  FollowedPick followed = follow_pick(
      from.shop, pick,
      {{from.capture, from.refused, line_in(from, id)}, {to.capture, to.refused, line_in(to, id)}});
  if (followed.now) add_changes(followed, set);
  return followed;
}

/// All that is said of a line; of one that is gone or not covered, that alone.
std::vector<Change> changes_of(const ChangeSet& set, LineId id) {
  std::vector<Change> found;
  for (const Change& change : set.changes) {
    if (change.line && change.line->id == id) found.push_back(change);
  }
  return found;
}

bool is_one(const std::vector<Change>& said, ChangeKind kind) {
  return said.size() == 1 && said[0].kind == kind;
}

void expect_agreement(const FollowedPick& followed, const std::vector<Change>& said) {
  const bool dropped = is_one(said, ChangeKind::line_dropped);
  const bool not_covered = is_one(said, ChangeKind::line_not_covered);
  EXPECT_EQ(followed.state == PickState::gone, dropped) << followed.pick.line;
  EXPECT_EQ(followed.state == PickState::not_looked || followed.state == PickState::refused,
            not_covered)
      << followed.pick.line;
  EXPECT_EQ(followed.state == PickState::there, !dropped && !not_covered) << followed.pick.line;
  EXPECT_EQ(followed.changes, followed.now ? said : std::vector<Change>());
}

TEST(PickLaw, SaysWhatTheDifferSaysOfTheSameTwoCaptures) {
  const std::uint64_t first = testing::seed_or(20261126);
  for (int round = 0; round < kRounds && !HasFailure(); ++round) {
    SCOPED_TRACE("RANGEBOOK_SEED=" + std::to_string(first + static_cast<std::uint64_t>(round)));
    Random random(first + static_cast<std::uint64_t>(round));
    const Snapshot from = testing::random_range(random, 1);
    Snapshot to = testing::random_range(random, 2);
    to.capture.on = from.capture.on + date::days(300);
    to.capture.scope = testing::random_scope(random);
    // To the differ a capture of picks covers no line; to a pick it does.
    if (to.capture.scope.kind == Scope::Kind::picks) to.capture.scope = {};
    if (random.one_in(3)) to.refused.push_back({"L" + std::to_string(random.below(8)), ""});
    const ChangeSet set = diff_snapshots(from, to, link_lines(from, to, {}, nullptr), {});
    for (const LineState& line : from.lines) {
      expect_agreement(follow(from, to, line.id, set), changes_of(set, line.id));
    }
  }
}

}  // namespace
}  // namespace rangebook
