// Picks in their forms: texts of the shop and of the stylist stay texts, and a sheet gives the same
// facts in each. Golden commands (tests/cases/picks-and-what-became-of-them) show the whole.
#include "reports/pick_report.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reports/pick_words.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

FollowedPick hostile_pick() {
  FollowedPick pick;
  pick.pick.number = 1;
  pick.pick.shop = "mill";
  pick.shop.slug = "mill";
  pick.pick.theme = "<script>alert(1)</script>";
  pick.pick.note = "=1+1";
  pick.pick.words = {{PickList::palette, "\"><img src=x>"}};
  pick.name = "<b>Maya</b>";
  pick.state = PickState::not_kept;
  return pick;
}

PickSheet sheet() { return {"", "", {hostile_pick()}}; }

TEST(PickReport, NoTextBecomesMarkup) {
  for (const ReportPage& page :
       {picks_page(sheet()), follow_up_page(sheet()), show_notes_page(sheet())}) {
    const std::string html = page_html(page);
    EXPECT_THAT(html, Not(HasSubstr("<script>alert")));
    EXPECT_THAT(html, Not(HasSubstr("<img")));
    EXPECT_THAT(html, Not(HasSubstr("<b>Maya")));
    const std::string markdown = page_markdown(page);
    EXPECT_THAT(markdown, Not(HasSubstr("<script>")));
    EXPECT_THAT(markdown, Not(HasSubstr("\"><img")));
  }
  EXPECT_THAT(picks_csv(sheet()), HasSubstr(",'=1+1,"));
}

TEST(PickReport, ThemesStandTogetherAndThoseWithoutOneLast) {
  PickSheet mixed;
  for (const char* theme : {"", "B", "A", "B"}) {
    FollowedPick pick = hostile_pick();
    pick.pick.number = static_cast<std::int64_t>(mixed.picks.size()) + 1;
    pick.pick.theme = theme;
    if (pick.pick.number == 4) pick.pick.review = parse_day("2026-09-01");
    mixed.picks.push_back(pick);
  }
  std::vector<std::int64_t> order;
  for (const FollowedPick& each : by_theme(mixed).picks) order.push_back(each.pick.number);
  EXPECT_EQ(order, (std::vector<std::int64_t>{3, 4, 2, 1}));
  const ReportPage page = show_notes_page(mixed);
  ASSERT_EQ(page.sections.size(), 3U);
  EXPECT_EQ(page.sections[1].tables.size(), 2U);
}

TEST(PickReport, ShowNotesHaveNoColumnsOfWordsThatWereNotSaid) {
  PickSheet plain;
  plain.picks.push_back(hostile_pick());
  const auto columns = [&plain] {
    std::string keys;
    const ReportPage page = show_notes_page(plain);
    for (const auto& column : page.sections.at(0).tables.at(0).columns) {
      keys += column.key + " ";
    }
    return keys;
  };
  EXPECT_EQ(columns(), "line shop price sizes colours fabric for note outcome ");
  plain.picks[0].pick.note.clear();
  plain.picks[0].pick.words.clear();
  EXPECT_EQ(columns(), "line shop price sizes colours fabric outcome ");
}

TEST(PickReport, SoldOutSizesAreNamedWithTheirColours) {
  EXPECT_EQ(sold_out_words({{"8", {}}, {"10", {"red", "navy"}}, {"", {}}}),
            "8, 10 in red and navy, its one size");
}

}  // namespace
}  // namespace rangebook
