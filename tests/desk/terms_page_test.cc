// Terms on the pages of the desk: read, looked at, kept, asked about, typed, told over time.
// The policies are invented.
#include <gmock/gmock.h>

#include "tests/desk/open_links.h"
#include "tracker/app/terms_desk.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using Fields = httplib::MultipartFormDataItems;

const std::string kPolicy =
    "Standard delivery costs £3.95 and is free on orders over £60.\n"
    "You can return items within 28 days of delivery.\n";

class TermsPage : public ::testing::Test {
 protected:
  TermsPage() {
    Book::open(folder_.file("b.rangebook"), true).put_shop(mill_shop());
    desk_.emplace(folder_);
  }
  httplib::Result send(const std::string& path, Fields fields) const {
    fields.push_back({"shop", "mill", "", ""});
    return desk_->post(path, fields);
  }
  std::string page(const std::string& path) const { return desk_->get(path)->body; }
  TermsInForce terms() const {
    const Book book = Book::open(folder_.file("b.rangebook"), false);
    return terms_in_force(book, book.find_shop("mill").value(), *parse_day("2099-12-31"));
  }
  std::string field(const std::string& name) const {
    return field_text(terms().terms, name).value_or("");
  }

  TempFolder folder_;
  std::optional<OpenDesk> desk_;
};

/// The value of a hidden field.
std::string hidden(const std::string& page, const std::string& name) {
  const std::string start = "name=\"" + name + "\" value=\"";
  const auto at = page.find(start);
  if (at == std::string::npos) return {};
  const auto begin = at + start.size();
  return page.substr(begin, page.find('"', begin) - begin);
}

TEST_F(TermsPage, APolicyIsLookedAtBeforeItIsKept) {
  const auto look = send("/terms/read", {{"text", kPolicy, "", ""}, {"on", "2026-09-01", "", ""}});
  EXPECT_EQ(look->status, 200);
  for (const char* text : {"28 days from delivery", "£3.95 and is free", "Nothing is kept yet",
                           "2011/83/EU", "stated"}) {
    EXPECT_THAT(look->body, HasSubstr(text));
  }
  EXPECT_FALSE(terms().returns_on);
  const Fields keep{{"along", hidden(look->body, "along"), "", ""},
                    {"along-name", "pasted text", "", ""},
                    {"on", "2026-09-01", "", ""},
                    {"keep", "yes", "", ""}};
  EXPECT_EQ(send("/terms/read", keep)->get_header_value("Location"), "/terms?shop=mill");
  EXPECT_EQ(send("/terms/read", keep)->status, 303);
  EXPECT_EQ(field("return.window"), "28 days from delivery");
  const std::string shown = page("/terms?shop=mill");
  EXPECT_THAT(shown, HasSubstr("The first terms in the book."));
  EXPECT_THAT(shown, Not(HasSubstr("Waits for a yes")));
  EXPECT_THAT(page("/terms"), HasSubstr("delivery as of 1 September 2026"));
}

TEST_F(TermsPage, AFileIsReadByItsOwnName) {
  const auto look =
      send("/terms/read", {{"file", "<p>" + kPolicy + "</p>", "C:\\x\\terms.html", "text/html"}});
  EXPECT_THAT(look->body, HasSubstr("<small>terms.html</small>"));
  EXPECT_EQ(hidden(look->body, "along-name"), "terms.html");
}

TEST_F(TermsPage, DoubtsWaitForAYes) {
  const std::string text = "Members can return items within 40 days of delivery.\n" + kPolicy;
  send("/terms/read", {{"text", text, "", ""}, {"keep", "yes", "", ""}});
  const std::string shown = page("/terms?shop=mill");
  ASSERT_THAT(shown, HasSubstr("Waits for a yes"));
  EXPECT_THAT(shown, HasSubstr("Asked because"));
  EXPECT_NE(field("return.window"), "40 days from delivery");
  const Fields yes{{"doubt", hidden(shown, "doubt"), "", ""}, {"says", "yes", "", ""}};
  EXPECT_EQ(send("/terms/answer", yes)->status, 303);
  const std::string kept = field("return.window");
  EXPECT_EQ(send("/terms/answer", yes)->status, 303);
  EXPECT_EQ(field("return.window"), kept);
  EXPECT_EQ(send("/terms/answer", {{"doubt", "1", "", ""}})->status, 400);
}

TEST_F(TermsPage, TypedTermsAndWhatChanged) {
  const auto type = [&](const char* on, const char* lines) {
    return send("/terms/type", {{"on", on, "", ""}, {"lines", lines, "", ""}});
  };
  EXPECT_EQ(
      type("2025-09-01", "return.window = 28 days from delivery\r\n\r\n# a remark\r\n")->status,
      303);
  EXPECT_EQ(type("2026-09-01", "return.window = 14 days from delivery")->status, 303);
  const std::string shown = page("/terms?shop=mill");
  for (const char* text :
       {"1 field changed", "28 days from delivery", "worse for the customer", "typed in"}) {
    EXPECT_THAT(shown, HasSubstr(text));
  }
  EXPECT_THAT(page("/terms?shop=mill&format=text"), HasSubstr("28 days from delivery"));
  const auto wrong = type("2026-09-02", "return.windows = 14 <b>days");
  EXPECT_EQ(wrong->status, 400);
  EXPECT_THAT(wrong->body, HasSubstr("return.windows = 14 &lt;b&gt;days</textarea>"));
  EXPECT_THAT(wrong->body, HasSubstr("value=\"2026-09-02\""));
}

TEST_F(TermsPage, WhatCannotBeReadIsSaidAndTheFormKept) {
  EXPECT_EQ(send("/terms/read", {})->status, 400);
  const auto none = send("/terms/read", {{"text", "Hello </textarea><b>", "", ""}});
  EXPECT_EQ(none->status, 400);
  EXPECT_THAT(none->body, HasSubstr("No terms were found"));
  EXPECT_THAT(none->body, HasSubstr("Hello &lt;/textarea&gt;"));
  EXPECT_EQ(send("/terms/read", {{"text", kPolicy, "", ""}, {"on", "soon", "", ""}})->status, 400);
  EXPECT_EQ(send("/terms/read", {{"along", "0g", "", ""}})->status, 400);
  EXPECT_EQ(desk_->get("/terms?shop=mil")->status, 404);
  EXPECT_EQ(desk_->get("/terms/read?shop=mil")->status, 404);
  EXPECT_FALSE(terms().returns_on);
}

TEST_F(TermsPage, ScriptInAPolicyStaysText) {
  const std::string script = "<script>alert(1)</script>";
  const std::string text = "return.window = 28 days from delivery\ndelivery.a.name = " + script;
  const auto look = send("/terms/read", {{"text", text, "", ""}});
  EXPECT_THAT(look->body, Not(HasSubstr(script)));
  send("/terms/read", {{"text", text, "", ""}, {"keep", "yes", "", ""}});
  EXPECT_THAT(page("/terms?shop=mill"), Not(HasSubstr(script)));
  EXPECT_THAT(page("/terms/type?shop=mill&lines=" + script), Not(HasSubstr(script)));
}

TEST_F(TermsPage, FormsWithoutTheirTokenAreTurnedAway) {
  for (const char* path : {"/terms/read", "/terms/type", "/terms/answer"}) {
    const auto answer = desk_->client().Post(path, desk_->own(), Fields{{"token", "x", "", ""}});
    EXPECT_EQ(answer->status, 403) << path;
  }
}

}  // namespace
}  // namespace rangebook
