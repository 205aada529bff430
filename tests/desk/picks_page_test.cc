// Picks on the pages of the desk: kept, followed, changed, dropped; her words; what is due.
#include <gmock/gmock.h>

#include "tests/desk/open_links.h"
#include "tracker/app/pick_desk.h"
#include "tracker/store/picks.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using Fields = httplib::MultipartFormDataItems;

class PicksPage : public ::testing::Test {
 protected:
  PicksPage() {
    keep_table(folder_, mill_shop(), "AW25", "2025-09-01",
               "M1,Maya Dress,dresses,navy,8|10|12,50.00,,GBP,yes,100% viscose,\n"
               "M2,Nora Blouse,tops,ecru,8|10,40.00,,GBP,yes,100% cotton,\n");
    keep_table(folder_, mill_shop(), "AW26", "2026-09-01",
               "M1,Maya Dress,dresses,navy|red,8|10,40.00,60.00,GBP,yes,100% viscose,\n"
               "M1,Maya Dress,dresses,navy|red,12,40.00,60.00,GBP,no,100% viscose,\n");
    desk_.emplace(folder_);
  }
  static Fields fields(const std::vector<std::pair<std::string, std::string>>& pairs) {
    Fields items;
    for (const auto& [name, value] : pairs) items.push_back({name, value, "", ""});
    return items;
  }
  httplib::Result keep(const std::string& line, const std::string& on,
                       std::vector<std::pair<std::string, std::string>> more = {}) const {
    more.insert(more.end(), {{"shop", "mill"}, {"line", line}, {"on", on}});
    return desk_->post("/picks/keep", fields(more));
  }
  std::string page(const std::string& path) const { return desk_->get(path)->body; }
  std::vector<Pick> kept() const {
    return kept_picks(Book::open(folder_.file("b.rangebook"), false), "");
  }

  TempFolder folder_;
  std::optional<OpenDesk> desk_;
};

TEST_F(PicksPage, ALineIsKeptFromTheListOfLines) {
  const std::string lines = page("/lines?shop=mill&words=maya");
  EXPECT_THAT(lines, HasSubstr("1 of 1 line"));
  EXPECT_THAT(lines, HasSubstr("/picks/keep?shop=mill&amp;line="));
  EXPECT_THAT(page("/lines?shop=mill&capture=AW25&category=tops"), HasSubstr("Nora Blouse"));
  EXPECT_THAT(page("/lines?shop=mill&words=teal"), HasSubstr("No line matches"));
  EXPECT_THAT(page("/line?shop=mill&line=M1"), HasSubstr("Keep it as a pick"));
  EXPECT_THAT(page("/picks/keep?shop=mill&line=M1"), HasSubstr("name=\"dress-code\""));
}

TEST_F(PicksPage, APickIsKeptWithHerWordsAndFollowed) {
  const auto answer = keep("M1", "2025-09-03",
                           {{"theme", "Harbour wedding"},
                            {"review", "2026-12-01"},
                            {"palette", "warm"},
                            {"palette", "deep"},
                            {"caution", "creases"},
                            {"note", "With flat shoes."}});
  EXPECT_EQ(answer->get_header_value("Location"), "/picks#pick-1");
  const std::string shown = page("/picks");
  for (const char* text :
       {"Harbour wedding", "To look at again on 1 December 2026", "deep, warm", "creases",
        "With flat shoes.", "there on", "red", "sold out: ", "marked down", "£50.00"}) {
    EXPECT_THAT(shown, HasSubstr(text));
  }
  EXPECT_THAT(page("/picks/notes?format=md"), HasSubstr("With flat shoes"));
  EXPECT_TRUE(desk_->get("/picks/follow?format=xlsx")->body.starts_with("PK"));
}

TEST_F(PicksPage, WhatIsGoneIsSaid) {
  keep("M2", "2025-09-03");
  EXPECT_THAT(page("/picks"), HasSubstr("gone: looked for and not found"));
}

TEST_F(PicksPage, AFormSentTwiceKeepsOnePick) {
  keep("M1", "2025-09-03");
  const auto again = keep("M1", "2025-09-03");
  EXPECT_EQ(again->status, 400);
  EXPECT_THAT(again->body, HasSubstr("It is pick 1 already."));
  EXPECT_THAT(again->body, Not(HasSubstr("rangebook picks")));
  EXPECT_EQ(kept().size(), 1U);
}

TEST_F(PicksPage, AWrongFormKeepsItsContent) {
  const auto wrong = keep(
      "M1", "soon", {{"theme", "A \"theme\""}, {"palette", "warm"}, {"note", "</textarea><b>"}});
  EXPECT_EQ(wrong->status, 400);
  for (const char* text : {"value=\"soon\"", "A &quot;theme&quot;", "value=\"warm\" checked",
                           "&lt;/textarea&gt;", "no date; write it as 2026-09-01"}) {
    EXPECT_THAT(wrong->body, HasSubstr(text));
  }
  EXPECT_EQ(keep("M1", "2025-09-03", {{"palette", "loud"}})->status, 400);
  EXPECT_TRUE(kept().empty());
}

TEST_F(PicksPage, ScriptThatIsKeptStaysText) {
  const std::string script = "<script>alert(1)</script>";
  desk_->post("/picks/words/add", fields({{"list", "palette"}, {"word", script}}));
  keep("M1", "2025-09-03", {{"theme", script}, {"note", script}, {"palette", script}});
  ASSERT_EQ(kept().size(), 1U);
  for (const char* path : {"/picks", "/picks/notes", "/picks/follow", "/picks/words",
                           "/picks/change?pick=1", "/picks/drop?pick=1", "/due?ahead=3660"}) {
    const auto shown = desk_->get(path);
    EXPECT_EQ(shown->status, 200) << path;
    EXPECT_THAT(shown->body, Not(HasSubstr(script))) << path;
  }
}

TEST_F(PicksPage, FormsWithoutTheirTokenAreTurnedAway) {
  for (const char* path :
       {"/picks/keep", "/picks/change", "/picks/drop", "/picks/words/add", "/picks/words/rename",
        "/picks/words/remove", "/links/answer", "/links/back"}) {
    const auto answer = desk_->client().Post(path, desk_->own(), fields({{"token", "x"}}));
    EXPECT_EQ(answer->status, 403) << path;
  }
}

TEST_F(PicksPage, APickIsChangedAndDropped) {
  keep("M1", "2025-09-03", {{"theme", "One"}, {"palette", "warm"}, {"review", "2026-12-01"}});
  const std::string form = page("/picks/change?pick=1");
  EXPECT_THAT(form, HasSubstr("value=\"warm\" checked"));
  EXPECT_THAT(form, HasSubstr("value=\"2026-12-01\""));
  desk_->post("/picks/change", fields({{"pick", "1"}, {"on", "2025-09-04"}, {"theme", "Two"}}));
  const auto picks = kept();
  ASSERT_EQ(picks.size(), 1U);
  EXPECT_EQ(picks[0].theme, "Two");
  EXPECT_TRUE(picks[0].words.empty());
  EXPECT_FALSE(picks[0].review);
  EXPECT_EQ(desk_->post("/picks/change", fields({{"pick", "1"}, {"review", "x"}}))->status, 400);
  EXPECT_THAT(page("/picks/drop?pick=1"), HasSubstr("Drop pick 1"));
  EXPECT_EQ(desk_->post("/picks/drop", fields({{"pick", "1"}}))->status, 303);
  EXPECT_EQ(desk_->post("/picks/drop", fields({{"pick", "1"}}))->status, 303);
  EXPECT_TRUE(kept().empty());
  EXPECT_EQ(desk_->get("/picks/change?pick=1")->status, 404);
  EXPECT_EQ(desk_->get("/picks/drop?pick=%00x")->status, 404);
}

TEST_F(PicksPage, HerWordsAreEdited) {
  keep("M1", "2025-09-03", {{"palette", "warm"}});
  const auto send = [&](const char* path, const std::string& word, const std::string& now) {
    return desk_->post(path, fields({{"list", "palette"}, {"word", word}, {"now", now}}))->status;
  };
  EXPECT_EQ(send("/picks/words/add", "jewel tones", ""), 303);
  EXPECT_EQ(send("/picks/words/add", "jewel tones", ""), 400);
  EXPECT_EQ(send("/picks/words/rename", "warm", "sunny"), 303);
  EXPECT_EQ(send("/picks/words/rename", "sunny", "jewel tones"), 400);
  EXPECT_THAT(page("/picks/words"), HasSubstr("sunny"));
  EXPECT_THAT(page("/picks/word?list=palette&word=sunny"), HasSubstr("on 1 pick"));
  EXPECT_EQ(kept()[0].words[0].word, "sunny");
  EXPECT_EQ(send("/picks/words/remove", "sunny", ""), 303);
  EXPECT_EQ(send("/picks/words/remove", "sunny", ""), 303);
  EXPECT_TRUE(kept()[0].words.empty());
  EXPECT_EQ(desk_->get("/picks/word?list=none&word=x")->status, 400);
}

TEST_F(PicksPage, ShopsAndThemesThatAreNotThereAreSaid) {
  keep("M1", "2025-09-03", {{"theme", "One"}});
  EXPECT_EQ(desk_->get("/picks?shop=mil")->status, 404);
  EXPECT_THAT(page("/picks?theme=Ono"), HasSubstr("One"));
  EXPECT_EQ(desk_->get("/lines?shop=mil")->status, 404);
}

TEST_F(PicksPage, TheStartPageTellsWhatIsDue) {
  keep("M1", "2025-09-03", {{"review", "2025-10-01"}, {"theme", "Harbour wedding"}});
  keep_table(folder_, mill_shop(), "SS30", to_string(today()), "M1,Maya Dress,,,,,,,,,\n");
  const std::string start = page("/");
  for (const char* text : {"Look again at ", "Harbour wedding", "due on 1 October 2025",
                           "Last revisit: against AW26, seen 1 September 2026."}) {
    EXPECT_THAT(start, HasSubstr(text));
  }
  EXPECT_THAT(start, Not(HasSubstr("Go back to")));
}

TEST_F(PicksPage, WhatIsDueAsOfADay) {
  keep("M1", "2025-09-03", {{"review", "2026-12-01"}});
  EXPECT_THAT(page("/due?on=2026-12-02"), HasSubstr("Maya Dress"));
  EXPECT_THAT(page("/due?on=2026-09-02"), Not(HasSubstr("Maya Dress")));
  const auto wrong = desk_->get("/due?on=2026-09-02&every=often");
  EXPECT_EQ(wrong->status, 400);
  EXPECT_THAT(wrong->body, HasSubstr("value=\"often\""));
  EXPECT_TRUE(desk_->get("/due?format=json")->body.starts_with("{"));
}

}  // namespace
}  // namespace rangebook
