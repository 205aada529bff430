// Picks in a book: kept from the right capture, followed by the same rules as the comparison of two
// captures, and due by the day that is asked about. Invented shops and rows.
#include "tracker/app/pick_desk.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

#include "tests/tracker/store/temp_book.h"
#include "tracker/store/picks.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

Day day(std::string_view text) { return parse_day(text).value(); }

const std::string kHeader = "line_code,name,category,colour,size,price,full_price,in_stock\n";
const std::string kThen = kHeader +
                          "M1,Maya Dress,Dresses,navy,8|10|12,50.00,,yes\n"
                          "M2,Nora Blouse,Tops,ecru,8|10,40.00,,yes\n"
                          "M3,Ida Coat,Coats,black,10|12,120.00,,yes\n";
const std::string kNow = kHeader +
                         "M1,Maya Dress,Dresses,navy|red,8|10|12,40.00,60.00,yes\n"
                         "M3,Ida Coat,Coats,black,10,130.00,,no\n"
                         "M3,Ida Coat,Coats,black,12,130.00,,yes\n";

class Picks : public ::testing::Test {
 protected:
  Picks() {
    take(kThen, "AW25", "2025-09-01");
    take(kNow, "AW26", "2026-09-01");
  }

  void take(const std::string& rows, const std::string& season, std::string_view on,
            const Scope& scope = {}) {
    const std::string file = folder_.file(season + ".csv");
    std::ofstream(file) << rows;
    CaptureRequest request;
    request.files = {file};
    request.shop = "mill";
    request.season = season;
    request.on = parse_day(on);
    request.scope = scope;
    ASSERT_TRUE(std::holds_alternative<CaptureReport>(run_capture(book_, request, {})));
  }

  static PickWish wish(const std::string& line, std::string_view on) {
    PickWish wish;
    wish.line = line;
    wish.on = day(on);
    return wish;
  }
  FollowedPick keep(const PickWish& wish) {
    auto kept = keep_pick(book_, wish);
    if (const auto* missing = std::get_if<NotThere>(&kept)) ADD_FAILURE() << missing->message;
    return std::get<FollowedPick>(kept);
  }
  std::string refusal(const PickWish& wish) {
    const auto kept = keep_pick(book_, wish);
    const auto* missing = std::get_if<NotThere>(&kept);
    return missing ? missing->message : "";
  }
  std::vector<FollowedPick> followed() {
    return std::get<PickSheet>(follow_picks(book_, {})).picks;
  }

  TempFolder folder_;
  Book book_ = [this] {
    Book book = Book::open(folder_.file("b.rangebook"), true);
    book.put_shop(mill_shop());
    return book;
  }();
};

TEST_F(Picks, AreMadeFromTheLatestCaptureByTheirDay) {
  EXPECT_EQ(keep(wish("M1", "2026-03-01")).then->seen.season, "AW25");
  EXPECT_EQ(keep(wish("M1", "2026-11-01")).then->seen.season, "AW26");
  PickWish named = wish("M3", "2026-11-01");
  named.capture = "AW25";
  EXPECT_EQ(keep(named).then->seen.season, "AW25");
  EXPECT_TRUE(check_book(book_).empty());
}

TEST_F(Picks, WhatCannotBeKeptIsSaidAndNothingIsKept) {
  EXPECT_THAT(refusal(wish("M1", "2024-01-01")), HasSubstr("first captured on 2025-09-01"));
  EXPECT_THAT(refusal(wish("Maya Dres", "2026-01-01")), HasSubstr("Did you mean \"Maya Dress\"?"));
  PickWish word = wish("M1", "2026-01-01");
  word.words[PickList::palette] = {"wram"};
  EXPECT_THAT(refusal(word), HasSubstr("Did you mean \"warm\"?"));
  PickWish gone = wish("M2", "2026-11-01");
  gone.capture = "AW26";
  EXPECT_THAT(refusal(gone), HasSubstr("last seen on 2025-09-01"));
  PickWish note = wish("M1", "2026-01-01");
  note.note = std::string(kMaxPickNote + 1, 'x');
  EXPECT_THAT(refusal(note), HasSubstr("4001 bytes"));
  EXPECT_THAT(kept_picks(book_, ""), IsEmpty());
  keep(wish("M1", "2026-01-01"));
  EXPECT_THAT(refusal(wish("Maya Dress", "2026-01-01")), HasSubstr("pick 1 already"));
}

/// The differ's answer to the same two captures, line by line.
TEST_F(Picks, AreFollowedAsTheComparisonOfBothCapturesSays) {
  for (const char* line : {"M1", "M2", "M3"}) keep(wish(line, "2025-09-02"));
  const auto set = std::get<ChangeSet>(run_comparison(book_, {"mill", "AW25", "AW26"}));
  for (const FollowedPick& pick : followed()) {
    std::vector<Change> said;
    for (const Change& change : set.changes) {
      if (change.line && change.line->code == pick.code) said.push_back(change);
    }
    if (pick.state == PickState::gone) {
      ASSERT_EQ(said.size(), 1U);
      EXPECT_EQ(said[0].kind, ChangeKind::line_dropped);
    } else {
      EXPECT_EQ(pick.changes, said) << pick.code;
    }
  }
  EXPECT_EQ(followed()[1].state, PickState::gone);
  EXPECT_THAT(followed()[2].sold_out, ElementsAre(SoldOutSize{"10", {}}));
}

TEST_F(Picks, OfAnUndoneCaptureKeepTheirWords) {
  keep(wish("M1", "2026-10-01"));
  book_.undo_capture("mill");
  const FollowedPick lost = followed().at(0);
  EXPECT_EQ(lost.state, PickState::not_kept);
  EXPECT_EQ(lost.name, "Maya Dress");  // as the capture that is left shows it
  take(kNow, "AW26", "2026-09-01");
  EXPECT_EQ(followed().at(0).state, PickState::not_looked);
}

TEST_F(Picks, ChangeOnlyWhatIsNamed) {
  PickWish full = wish("M1", "2026-10-01");
  full.theme = "Harbour wedding";
  full.review = day("2026-12-01");
  full.note = "With the ecru coat.";
  full.words = {{PickList::palette, {"warm", "deep"}}, {PickList::caution, {"creases"}}};
  keep(full);
  PickChange change;
  change.words[PickList::palette] = {"cool"};
  change.review = std::optional<Day>();
  const Pick now = std::get<FollowedPick>(change_pick(book_, 1, change)).pick;
  EXPECT_EQ(now, kept_picks(book_, "").at(0));
  EXPECT_EQ(now.theme, "Harbour wedding");
  EXPECT_EQ(now.review, std::nullopt);
  EXPECT_THAT(now.words, ElementsAre(PickWord{PickList::palette, "cool"},
                                     PickWord{PickList::caution, "creases"}));
  change.on = day("2026-08-01");
  EXPECT_TRUE(std::holds_alternative<NotThere>(change_pick(book_, 1, change)));
  EXPECT_TRUE(std::holds_alternative<NotThere>(drop_picks(book_, {1, 2})));
  EXPECT_EQ(kept_picks(book_, "").size(), 1U);
  drop_picks(book_, {1});
  EXPECT_THAT(kept_picks(book_, ""), IsEmpty());
}

TEST_F(Picks, TheVocabularyIsHers) {
  PickWish kept = wish("M1", "2026-10-01");
  kept.words[PickList::dress_code] = {"smart casual"};
  keep(kept);
  const PickWord word{PickList::dress_code, "smart casual"};
  EXPECT_EQ(std::get<std::int64_t>(reword_vocabulary(book_, word, "smart, no tie")), 1);
  EXPECT_EQ(kept_picks(book_, "").at(0).words.at(0).word, "smart, no tie");
  EXPECT_TRUE(std::holds_alternative<NotThere>(reword_vocabulary(book_, word, "x")));
  EXPECT_EQ(std::get<std::int64_t>(
                remove_from_vocabulary(book_, {PickList::dress_code, "smart, no tie"})),
            1);
  EXPECT_THAT(kept_picks(book_, "").at(0).words, IsEmpty());
  EXPECT_TRUE(std::holds_alternative<NotThere>(add_to_vocabulary(book_, {PickList::palette, " "})));
  EXPECT_TRUE(
      std::holds_alternative<NotThere>(add_to_vocabulary(book_, {PickList::palette, "warm"})));
  EXPECT_EQ(std::get<std::int64_t>(add_to_vocabulary(book_, {PickList::palette, "jewel"})), 0);
}

TEST_F(Picks, AreDueByTheDayThatIsAskedAbout) {
  Shop other = mill_shop();
  other.slug = "kiln";
  book_.put_shop(other);
  PickWish early = wish("M1", "2025-10-01");
  early.review = day("2026-01-10");
  keep(early);
  const auto due = [this](std::string_view on, int ahead = 0) {
    return what_is_due(book_, {day(on), 90, ahead});
  };
  // 2025-09-01 and 90 days is 2025-11-30.
  EXPECT_EQ(due("2025-11-29").shops.size(), 1U);
  EXPECT_EQ(due("2025-11-29").next, day("2025-11-30"));
  EXPECT_EQ(due("2025-11-29", 1).shops.size(), 2U);
  EXPECT_EQ(due("2025-11-30").shops.at(0).last, std::nullopt);
  EXPECT_EQ(due("2025-11-30").shops.at(1).due, day("2025-11-30"));
  EXPECT_THAT(due("2026-01-09").picks, IsEmpty());
  const auto picks = due("2026-01-10").picks;
  ASSERT_EQ(picks.size(), 1U);
  EXPECT_EQ(picks[0].state, PickState::not_looked);  // the capture of AW26 was not made yet
  EXPECT_EQ(due("2026-09-01").picks.at(0).state, PickState::there);
  EXPECT_THAT(due("2025-09-30").picks, IsEmpty());
  EXPECT_EQ(due("2025-09-30").picks_later, 0U);  // it was not a pick yet
}

}  // namespace
}  // namespace rangebook
