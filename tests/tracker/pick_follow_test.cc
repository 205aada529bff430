// What became of a pick: state by state, and never more than a capture looked for.
#include "tracker/pick_follow.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/range_text.h"
#include "tracker/differ.h"
#include "tracker/linker.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::range;

HistoryCapture capture(int year, const std::string& row) {
  Snapshot snapshot = range("AW25", row);
  HistoryCapture capture{snapshot.capture, {}, std::nullopt};
  capture.capture.id = year;
  capture.capture.season = "AW" + std::to_string(year);
  capture.capture.on = date::sys_days(date::year(2000 + year) / 9 / 1);
  if (!snapshot.lines.empty()) capture.line = snapshot.lines.front();
  return capture;
}

HistoryCapture within(HistoryCapture capture, Scope scope) {
  capture.capture.scope = std::move(scope);
  return capture;
}

Pick pick_of(int year) {
  Pick pick;
  pick.seen_on = pick.on = date::sys_days(date::year(2000 + year) / 9 / 1);
  return pick;
}

Snapshot snapshot_of(const HistoryCapture& capture) {
  Snapshot snapshot = range("AW25", "");
  snapshot.capture = capture.capture;
  snapshot.refused = capture.refused;
  if (capture.line) snapshot.lines = {*capture.line};
  return snapshot;
}

FollowedPick follow(const std::vector<HistoryCapture>& captures) {
  FollowedPick followed = follow_pick(range("AW25", "").shop, pick_of(22), captures);
  for (const HistoryCapture& each : captures) {
    if (!followed.now || each.capture.id != followed.by->id) continue;
    const Snapshot from = snapshot_of(captures.front());
    const Snapshot to = snapshot_of(each);
    add_changes(followed, diff_snapshots(from, to, link_lines(from, to, {}, nullptr), {}));
  }
  return followed;
}

std::vector<ChangeKind> kinds(const FollowedPick& followed) {
  std::vector<ChangeKind> all;
  for (const Change& change : followed.changes) all.push_back(change.kind);
  return all;
}

const char kDress[] = "A1 | Maya Dress | Dresses | navy | 8, 10, 12 | 50 | in | 100% cotton";
const char kDearer[] = "A1 | Maya Dress | Dresses | navy, red | 8, 10, 12 | 60 | in | 100% cotton";
const Scope kDresses{Scope::Kind::categories, {"dresses"}};
const Scope kKnitwear{Scope::Kind::categories, {"knitwear"}};
const Scope kPicks{Scope::Kind::picks, {}};

TEST(PickFollow, ThereWithWhatChangedSinceThePick) {
  const auto followed = follow({capture(22, kDress), capture(23, kDress), capture(24, kDearer)});
  EXPECT_EQ(followed.state, PickState::there);
  EXPECT_EQ(followed.by->id, 24);
  EXPECT_EQ(followed.then->seen.capture, 22);
  EXPECT_EQ(followed.now->seen.capture, 24);
  EXPECT_THAT(kinds(followed), ElementsAre(ChangeKind::colour_added, ChangeKind::price_up));
  EXPECT_EQ(followed.changes[0].evidence.before->capture, 22);
  EXPECT_THAT(followed.new_colours, ElementsAre("red"));
  EXPECT_FALSE(followed.was_away);
}

TEST(PickFollow, GoneOnlyWhereACaptureLookedForIt) {
  EXPECT_EQ(follow({capture(22, kDress), capture(23, "")}).state, PickState::gone);
  EXPECT_EQ(follow({capture(22, kDress), within(capture(23, ""), kDresses)}).state,
            PickState::gone);
  const auto elsewhere = follow({capture(22, kDress), within(capture(23, ""), kKnitwear)});
  EXPECT_EQ(elsewhere.state, PickState::not_looked);
  EXPECT_EQ(elsewhere.by, std::nullopt);
  EXPECT_EQ(elsewhere.latest->id, 23);
  EXPECT_EQ(follow({capture(22, kDress)}).state, PickState::not_looked);
}

TEST(PickFollow, ACaptureOfThePicksLookedForWhatWasPickedByThen) {
  const std::vector<HistoryCapture> captures{capture(22, kDress), within(capture(23, ""), kPicks)};
  EXPECT_EQ(follow(captures).state, PickState::gone);
  Pick later = pick_of(22);
  later.on = later.on + date::days(800);
  EXPECT_EQ(follow_pick(range("AW25", "").shop, later, captures).state, PickState::not_looked);
}

TEST(PickFollow, WhoDidNotLookDoesNotHideWhoDid) {
  const auto followed =
      follow({capture(22, kDress), capture(23, ""), within(capture(24, ""), kKnitwear)});
  EXPECT_EQ(followed.state, PickState::gone);
  EXPECT_EQ(followed.by->id, 23);
  EXPECT_EQ(followed.latest->id, 24);
}

TEST(PickFollow, BackInANewColour) {
  const auto followed = follow({capture(22, kDress), capture(23, ""), capture(24, kDearer)});
  EXPECT_EQ(followed.state, PickState::there);
  EXPECT_TRUE(followed.was_away);
  EXPECT_THAT(followed.new_colours, ElementsAre("red"));
}

TEST(PickFollow, ARowThatCouldNotBeReadIsNotGone) {
  auto unread = capture(23, "");
  unread.refused.push_back({"A1", ""});
  EXPECT_EQ(follow({capture(22, kDress), unread}).state, PickState::refused);
}

TEST(PickFollow, SoldOutSizesInEveryColourOrInSome) {
  const auto followed =
      follow({capture(22, kDress), capture(23, std::string(kDearer) + "\n : navy 8 50 out"
                                                                      "\n : red 8 50 out"
                                                                      "\n : red 12 50 out")});
  EXPECT_THAT(followed.sold_out, ElementsAre(SoldOutSize{"8", {}}, SoldOutSize{"12", {"red"}}));
  EXPECT_THAT(follow({capture(22, kDress), capture(23, kDress)}).sold_out, IsEmpty());
}

TEST(PickFollow, APickWhoseCaptureIsNotKept) {
  const auto followed = follow({});
  EXPECT_EQ(followed.state, PickState::not_kept);
  EXPECT_EQ(followed.then, std::nullopt);
}

}  // namespace
}  // namespace rangebook
