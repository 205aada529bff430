// Settling links on the pages of the desk: each answer is kept once and can be taken back.
#include <gmock/gmock.h>

#include "tests/desk/open_links.h"
#include "tracker/desk/desk_sheet.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class LinksPage : public ::testing::Test {
 protected:
  LinksPage() {
    keep_renamed(folder_);
    desk_.emplace(folder_);
  }
  int answer(const std::string& pair, const std::string& says) const {
    return desk_
        ->post("/links/answer",
               {{"shop", "mill", "", ""}, {"pair", pair, "", ""}, {"says", says, "", ""}})
        ->status;
  }
  int take_back(const std::string& pair, const std::string& said) const {
    return desk_
        ->post("/links/back",
               {{"shop", "mill", "", ""}, {"pair", pair, "", ""}, {"said", said, "", ""}})
        ->status;
  }
  std::string page(const std::string& path) const { return desk_->get(path)->body; }

  TempFolder folder_;
  std::optional<OpenDesk> desk_;
};

TEST_F(LinksPage, TellsHowManyWaitInEachShop) {
  EXPECT_THAT(page("/"), HasSubstr("2 pairs of lines wait"));
  EXPECT_THAT(page("/"), HasSubstr("Say which line is which"));
  EXPECT_THAT(page("/links"), HasSubstr("2 pairs wait"));
}

TEST_F(LinksPage, ShowsBothLinesWithTheDifferingWordsMarked) {
  const auto pair = links_of(folder_).waiting.back();
  const std::string shown = page("/links?shop=mill&pair=" + pair.reference);
  for (const char* text :
       {"The names share words", "AW24, seen 2 September 2024", "AW25, seen 1 September 2025",
        "AW24.csv, line", "differs: ", "data-key=\"y\"", "/desk.js"}) {
    EXPECT_THAT(shown, HasSubstr(text));
  }
}

TEST_F(LinksPage, AnsweredPairsAreNotAskedAgain) {
  const auto list = links_of(folder_);
  EXPECT_EQ(answer(list.waiting[0].reference, "yes"), 303);
  EXPECT_EQ(answer(list.waiting[1].reference, "no"), 303);
  const std::string shown = page("/links?shop=mill");
  EXPECT_THAT(shown, HasSubstr("nothing waits"));
  EXPECT_THAT(shown, HasSubstr("two lines."));
  EXPECT_EQ(links_of(folder_).decided.size(), 2U);
}

TEST_F(LinksPage, AFormSentTwiceIsOneAnswer) {
  const std::string pair = links_of(folder_).waiting[0].reference;
  EXPECT_EQ(answer(pair, "yes"), 303);
  EXPECT_EQ(answer(pair, "yes"), 303);
  EXPECT_EQ(take_back(pair, "yes"), 303);
  EXPECT_EQ(links_of(folder_).waiting.size(), 2U);
}

TEST_F(LinksPage, TakingBackTwiceLeavesWhatHeldBefore) {
  const std::string pair = links_of(folder_).waiting[0].reference;
  answer(pair, "yes");
  answer(pair, "no");
  EXPECT_EQ(take_back(pair, "no"), 303);
  EXPECT_EQ(take_back(pair, "no"), 303);
  const auto decided = links_of(folder_).decided;
  ASSERT_EQ(decided.size(), 1U);
  EXPECT_TRUE(decided[0].same);
}

TEST_F(LinksPage, LaterShowsTheNextPairAndKeepsTheFirst) {
  const auto list = links_of(folder_);
  const auto& [first, second] = std::pair(list.waiting[0], list.waiting[1]);
  EXPECT_THAT(page("/links?shop=mill&later=" + first.reference),
              HasSubstr("name=\"pair\" value=\"" + second.reference));
  const std::string none =
      page("/links?shop=mill&later=" + first.reference + "," + second.reference);
  EXPECT_THAT(none, HasSubstr("Go through them now"));
  EXPECT_THAT(none, HasSubstr("2 pairs wait"));
}

TEST_F(LinksPage, AContradictionIsSaidAndNothingIsKept) {
  const auto list = links_of(folder_);
  const auto wrong =
      desk_->post("/links/answer",
                  {{"shop", "mill", "", ""}, {"pair", "zzzzz", "", ""}, {"says", "yes", "", ""}});
  EXPECT_EQ(wrong->status, 409);
  EXPECT_THAT(wrong->body, HasSubstr("No pair has the reference"));
  EXPECT_THAT(wrong->body, Not(HasSubstr("rangebook links")));
  EXPECT_EQ(answer(list.waiting[0].reference, "perhaps"), 409);
  EXPECT_TRUE(links_of(folder_).decided.empty());
}

TEST_F(LinksPage, WhatWasSaidIsListedWithTheWayBack) {
  const std::string pair = links_of(folder_).waiting[0].reference;
  answer(pair, "no");
  const std::string said = page("/links/said?shop=mill");
  EXPECT_THAT(said, HasSubstr("two lines."));
  EXPECT_THAT(said, HasSubstr("action=\"/links/back\""));
}

TEST_F(LinksPage, UnknownShopsAreSaid) {
  EXPECT_EQ(desk_->get("/links?shop=mil")->status, 404);
  EXPECT_EQ(desk_->get("/links/said?shop=mil")->status, 404);
  EXPECT_EQ(desk_->post("/links/back", {{"shop", "mil", "", ""}})->status, 404);
}

TEST(DeskMessages, HaveNoCommands) {
  EXPECT_EQ(without_commands("No pair has it. See: rangebook links mill"), "No pair has it.");
  EXPECT_EQ(without_commands("It is so. Take that back first: rangebook links undo a"),
            "It is so. Take that back first.");
  EXPECT_EQ(without_commands("Nothing: all is well."), "Nothing: all is well.");
}

}  // namespace
}  // namespace rangebook
