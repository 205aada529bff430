// What the pages say of a small book. Invented rows.
#include <gmock/gmock.h>

#include "tests/desk/open_desk.h"
#include "tracker/store/terms_store.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class DeskPages : public ::testing::Test {
 protected:
  DeskPages() {
    keep_rows(folder_, "AW25", "2025-09-01",
              "AB1,Maya dress,dresses,navy,8-18,49.00,GBP\n"
              "AB2,Nora coat,coats,black,8-18,149.00,GBP\n");
    keep_rows(folder_, "AW26", "2026-09-01",
              "AB1,Maya dress,dresses,navy,8-22,55.00,GBP\n"
              "AB3,Olga top,tops,rust,8-18,29.00,GBP\n");
  }
  TempFolder folder_;
};

TEST_F(DeskPages, StartTellsShopsAndWhatChanged) {
  const OpenDesk desk(folder_);
  const std::string page = desk.get("/")->body;
  EXPECT_THAT(page, HasSubstr("Mill"));
  EXPECT_THAT(page, HasSubstr("AW26, seen 1 September 2026: 2 lines"));
  EXPECT_THAT(page, HasSubstr("/brief?shop=mill"));
}

// What is remembered of a shop must not outlast a capture or a version of its terms.
TEST_F(DeskPages, StartTellsOfTermsAndCapturesThatCameSince) {
  const OpenDesk desk(folder_);
  EXPECT_THAT(desk.get("/")->body, HasSubstr("22"));
  keep_rows(folder_, "SS27", "2026-11-02",
            "AB1,Maya dress,dresses,navy,8-22,55.00,GBP\n"
            "AB3,Olga top,tops,rust,8-18,29.00,GBP\n");
  const std::string before = desk.get("/")->body;
  EXPECT_THAT(before, HasSubstr("SS27, seen 2 November 2026: 2 lines"));
  EXPECT_THAT(before, HasSubstr("Last revisit: against AW26, seen 1 September 2026."));
  EXPECT_THAT(before, Not(HasSubstr("14 days")));
  for (const auto& [day, window] : {std::pair("2026-08-01", "28 days from delivery"),
                                    std::pair("2026-11-01", "14 days from delivery")}) {
    Book book = Book::open(folder_.file("b.rangebook"), true);
    type_terms(book, book.find_shop("mill").value(), parse_day(day).value(),
               {{"return.window", window}});
  }
  EXPECT_THAT(desk.get("/")->body, HasSubstr("14 days"));
}

TEST_F(DeskPages, ABriefIsShownAndKept) {
  const OpenDesk desk(folder_);
  const std::string page = desk.get("/brief?shop=mill")->body;
  EXPECT_THAT(page, HasSubstr("AW25"));
  EXPECT_THAT(page, HasSubstr("Maya dress"));
  EXPECT_THAT(page, HasSubstr("/desk.css"));
  const auto book = desk.get("/brief?shop=mill&format=xlsx");
  EXPECT_TRUE(book->body.starts_with("PK"));
  EXPECT_EQ(book->get_header_value("Content-Disposition"), "attachment; filename=\"mill.xlsx\"");
  EXPECT_TRUE(desk.get("/brief?shop=mill&format=json")->body.starts_with("{"));
}

TEST_F(DeskPages, ChangesAreNarrowed) {
  const OpenDesk desk(folder_);
  const std::string all = desk.get("/moves?shop=mill")->body;
  EXPECT_THAT(all, HasSubstr("Olga top"));
  EXPECT_THAT(all, HasSubstr("Nora coat"));
  const std::string few = desk.get("/moves?shop=mill&words=olga")->body;
  EXPECT_THAT(few, HasSubstr("Olga top"));
  EXPECT_THAT(few, Not(HasSubstr("Nora coat")));
  const auto file = desk.get("/moves?shop=mill&words=olga&format=csv");
  EXPECT_THAT(file->body, HasSubstr("Olga top"));
  EXPECT_THAT(file->body, Not(HasSubstr("Nora coat")));
}

TEST_F(DeskPages, ALineHasItsHistory) {
  const OpenDesk desk(folder_);
  EXPECT_THAT(desk.get("/line?shop=mill&line=AB1")->body, HasSubstr("Maya dress"));
  EXPECT_EQ(desk.get("/line?shop=mill&line=ZZ9")->status, 404);
}

TEST_F(DeskPages, SizesAcrossShopsAreAskedByAForm) {
  const OpenDesk desk(folder_);
  EXPECT_THAT(desk.get("/reach")->body, HasSubstr("name=\"size\""));
  EXPECT_THAT(desk.get("/reach?size=22&category=dresses")->body, HasSubstr("Mill"));
  const auto wrong = desk.get("/reach?size=22&category=dreses");
  EXPECT_EQ(wrong->status, 400);
  EXPECT_THAT(wrong->body, HasSubstr("value=\"dreses\""));
  EXPECT_THAT(desk.get("/sizes?shop=mill")->body, HasSubstr("name=\"capture\""));
}

TEST_F(DeskPages, WhatIsAskedAgainKnowsOfANewCapture) {
  const OpenDesk desk(folder_);
  const std::string question = "/reach?size=24&category=dresses";
  const std::string before = desk.get(question)->body;
  EXPECT_EQ(desk.get(question)->body, before);
  keep_rows(folder_, "SS27", "2027-03-01", "AB1,Maya dress,dresses,navy,8-24,55.00,GBP\n");
  EXPECT_THAT(before, Not(HasSubstr("1 March 2027")));
  EXPECT_THAT(desk.get(question)->body, HasSubstr("1 March 2027"));
}

TEST_F(DeskPages, AnOrderThatIsNotUnderstoodKeepsItsWords) {
  const OpenDesk desk(folder_);
  const auto wrong = desk.get("/order?currency=GBP&keep=sixty");
  EXPECT_EQ(wrong->status, 400);
  EXPECT_THAT(wrong->body, HasSubstr("value=\"sixty\""));
  EXPECT_THAT(wrong->body, HasSubstr("no amount in GBP"));
}

TEST_F(DeskPages, UnknownShopsAreSaid) {
  const OpenDesk desk(folder_);
  const auto answer = desk.get("/brief?shop=mil");
  EXPECT_EQ(answer->status, 404);
  EXPECT_THAT(answer->body, HasSubstr("mill"));
}

TEST(DeskWithoutABook, LeadsToTheFirstCapture) {
  const TempFolder folder;
  const OpenDesk desk(folder);
  EXPECT_THAT(desk.get("/")->body, HasSubstr("The book is empty"));
  EXPECT_EQ(desk.get("/brief?shop=mill")->status, 404);
}

TEST(DeskAddresses, AreEncoded) {
  EXPECT_EQ(desk_address("/line", {{"shop", "a b", {}}, {"none", "", {}}, {"line", "&é", {}}}),
            "/line?shop=a%20b&line=%26%C3%A9");
}

}  // namespace
}  // namespace rangebook
