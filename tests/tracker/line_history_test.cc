// A line through captures that show it, miss it, did not look, or could not read its row.
#include "tracker/line_history.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/range_text.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::range;

HistoryCapture capture(int year, const std::string& row, const std::string& link = "") {
  Snapshot snapshot = range("AW25", row);
  HistoryCapture capture{snapshot.capture, {}, std::nullopt, link};
  capture.capture.id = year;
  capture.capture.season = "AW" + std::to_string(year);
  capture.capture.on = date::sys_days(date::year(2000 + year) / 9 / 1);
  if (!snapshot.lines.empty()) capture.line = snapshot.lines.front();
  return capture;
}

std::vector<Presence> presences(const std::vector<HistoryEntry>& entries) {
  std::vector<Presence> all;
  for (const HistoryEntry& entry : entries) all.push_back(entry.presence);
  return all;
}

const char kDress[] = "A1 | Maya Dress | Dresses | navy | 8, 10, 12 | 50 | in | 100% cotton";

TEST(LineHistory, SaysWhetherACaptureLookedForTheLine) {
  std::vector<HistoryCapture> captures{capture(22, kDress), capture(23, ""), capture(24, ""),
                                       capture(25, ""), capture(26, kDress, "same code")};
  captures[2].capture.scope = {Scope::Kind::categories, {"knitwear"}};
  captures[3].refused.push_back({"A1", ""});
  const auto entries = tell_history(range("AW25", "").shop, captures);
  EXPECT_THAT(presences(entries),
              ElementsAre(Presence::seen, Presence::absent, Presence::not_looked, Presence::refused,
                          Presence::seen));
  EXPECT_EQ(entries[4].link, "same code");
  EXPECT_THAT(entries[4].changes, IsEmpty());
}

TEST(LineHistory, TellsWhatChangedSinceItWasLastSeen) {
  const auto entries = tell_history(
      range("AW25", "").shop,
      {capture(24, kDress), capture(25, ""),
       capture(26,
               "B2 | Maya Midi Dress | Dresses | navy, red | 8, 10, 12, 14 | 40/60 | in | "
               "100% cotton")});
  std::vector<ChangeKind> kinds;
  for (const Change& change : entries[2].changes) kinds.push_back(change.kind);
  EXPECT_THAT(kinds, ElementsAre(ChangeKind::line_renamed, ChangeKind::line_recoded,
                                 ChangeKind::colour_added, ChangeKind::sizes_widened,
                                 ChangeKind::price_up, ChangeKind::marked_down));
  EXPECT_EQ(entries[2].changes[0].evidence.before->season, "AW24");
  const SeenLine& now = *entries[2].line;
  EXPECT_EQ(to_string(now.price->low), "40.00 EUR");
  EXPECT_EQ(to_string(now.full_price->high), "60.00 EUR");
  EXPECT_EQ(now.variants, 8U);
  EXPECT_EQ(now.marked_down, 8U);
  EXPECT_EQ(now.stock, (StockFact{8, 8}));
  ASSERT_EQ(now.sizes.size(), 1U);
  EXPECT_EQ(now.sizes[0].max, "14");
  EXPECT_EQ(now.category, "dresses");
}

}  // namespace
}  // namespace rangebook
