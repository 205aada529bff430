// Decisions in the book: the newest holds, taking back gives the state before, and captures that
// come and go do not touch them.
#include "tracker/store/decisions.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/store/temp_book.h"
#include "tracker/store/capture_writer.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

Day day(int number) { return date::sys_days(date::year(2026) / 9 / number); }

void capture(Book& book, int on, const std::vector<std::string>& codes) {
  CaptureInfo info;
  info.shop = "mill";
  info.season = "AW26";
  info.on = day(on);
  CaptureWriter writer(book, mill_shop(), info, true);
  writer.add_bytes(std::to_string(on));
  writer.end_document({.name = "a.csv", .importer = "table"});
  for (const auto& code : codes) writer.add("code:" + code, plain_listing(code, {"8"}, 5000));
  writer.finish(true);
}

class Decisions : public ::testing::Test {
 protected:
  void SetUp() override {
    book_.put_shop(mill_shop());
    capture(book_, 1, {"A", "B", "C"});
  }
  void decide(LineId a, LineId b, bool same) {
    keep_decisions(book_, {{0, {a, b, same, day(1), day(1)}, 0.7, "why"}});
  }
  std::vector<bool> answers() const {
    std::vector<bool> found;
    for (const auto& kept : kept_decisions(book_, "mill")) found.push_back(kept.about.same);
    return found;
  }

  TempFolder folder_;
  Book book_ = Book::open(folder_.file("b.rangebook"), true);
};

TEST_F(Decisions, TheNewestHolds) {
  decide(1, 2, true);
  decide(2, 3, true);
  decide(2, 1, false);
  EXPECT_THAT(answers(), ElementsAre(true, false));
  const auto kept = kept_decisions(book_, "mill").back();
  EXPECT_EQ(kept.about.a, 1);
  EXPECT_EQ(kept.sentence, "why");
  EXPECT_EQ(kept.score, 0.7);
  EXPECT_EQ(newest_decision(book_, "")->shop, "mill");
}

TEST_F(Decisions, TakingBackGivesTheStateBefore) {
  decide(1, 2, true);
  decide(1, 2, false);
  const LinkDecision pair{2, 1, true, {}, {}};
  EXPECT_TRUE(decision_below(book_, pair)->about.same);
  drop_decision(book_, pair);
  EXPECT_THAT(answers(), ElementsAre(true));
  EXPECT_FALSE(decision_below(book_, pair));
  drop_decision(book_, pair);
  EXPECT_THAT(answers(), IsEmpty());
  EXPECT_FALSE(newest_decision(book_, "mill"));
}

TEST_F(Decisions, ALineCanStandAgainstItselfOnTwoDays) {
  keep_decisions(book_, {{0, {1, 1, false, day(9), day(1)}, 0, ""}});
  keep_decisions(book_, {{0, {1, 1, true, day(9), day(20)}, 0, ""}});
  EXPECT_THAT(answers(), ElementsAre(false, true));
  EXPECT_EQ(kept_decisions(book_, "mill")[0].about.a_on, day(1));
}

TEST_F(Decisions, SurviveUndoAndCapturingAgain) {
  capture(book_, 2, {"A", "D"});
  const LineId fresh = read_snapshot(book_, 2, SnapshotDetail::without).lines.back().id;
  decide(1, fresh, true);
  book_.undo_capture("mill");
  EXPECT_THAT(answers(), ElementsAre(true));
  capture(book_, 2, {"D", "A"});
  EXPECT_EQ(read_snapshot(book_, 3, SnapshotDetail::without).lines.back().id, fresh);
  EXPECT_THAT(check_book(book_), IsEmpty());
}

}  // namespace
}  // namespace rangebook
