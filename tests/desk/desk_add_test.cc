// A capture by way of the desk: handed over, looked at, corrected, kept, taken back. Invented rows.
#include <gmock/gmock.h>

#include <filesystem>
#include <future>

#include "tests/desk/open_desk.h"
#include "tests/desk/slow_client.h"
#include "tracker/desk/upload_request.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using Items = httplib::MultipartFormDataItems;

const std::string kRows =
    "line_code,name,category,colour,size,Wert,currency\n"
    "AB1,Maya dress,dresses,navy,8-18,49.00,GBP\n"
    "AB2,Nora coat,coats,black,8-18,149.00,GBP\n";
const std::string kScript = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>";

class DeskAdd : public ::testing::Test {
 protected:
  const OpenDesk& desk() const { return desk_; }
  Book book() const { return Book::open(folder_.file("b.rangebook"), true); }

  /// What the form says of a new shop, besides its documents.
  static Items words(Items more = {}) {
    Items items{{"name", "Mill & Daughters", "", ""}, {"country", "gb", "", ""},
                {"currency", "GBP", "", ""},          {"sizes", "uk", "", ""},
                {"season", "AW26", "", ""},           {"on", "2026-09-01", "", ""}};
    items.insert(items.end(), more.begin(), more.end());
    return items;
  }
  /// The address that an upload leads to.
  std::string hand_over(const Items& items) const {
    const auto answer = desk_.post("/add", items);
    EXPECT_EQ(answer->status, 303) << answer->body;
    return answer->get_header_value("Location");
  }
  std::string hand_over_rows() const {
    return hand_over(words({{"documents", kRows, "aw26.csv", "text/csv"}}));
  }
  static std::string id_in(const std::string& address) {
    return address.substr(address.find('=') + 1);
  }
  httplib::Result send(const std::string& path, const std::string& address, Items more = {}) const {
    more.push_back({"upload", id_in(address), "", ""});
    return desk_.post(path, more);
  }
  std::string waiting_on(const std::string& path) const { return desk_.get(path)->body; }

  TempFolder folder_;
  OpenDesk desk_{folder_};
};

TEST_F(DeskAdd, HandedOverSeenCorrectedKeptAndTakenBack) {
  const std::string address = hand_over_rows();
  const std::string seen = desk().get(address)->body;
  EXPECT_THAT(seen, HasSubstr("2 lines, 12 variants: 2 new to the book"));
  EXPECT_THAT(seen, HasSubstr("as found: not used"));
  EXPECT_TRUE(book().shops().empty());  // looking keeps nothing

  const auto read =
      send("/held/reading", address, {{"column-6", "Wert", "", ""}, {"means-6", "price", "", ""}});
  EXPECT_EQ(read->status, 303);
  EXPECT_THAT(desk().get(address)->body, HasSubstr("is read as <bdi>49.00 GBP"));

  const auto kept = send("/held/keep", address, {{"as-usual", "yes", "", ""}});
  ASSERT_EQ(kept->status, 303) << kept->body;
  const Shop shop = book().find_shop("mill-daughters").value().shop;
  EXPECT_EQ(shop.name, "Mill & Daughters");
  EXPECT_EQ(shop.country, "GB");
  EXPECT_EQ(shop.sizes, SizeSystem::uk);
  EXPECT_EQ(book().captures("mill-daughters").size(), 1U);
  ASSERT_EQ(book().profiles("mill-daughters").size(), 1U);
  EXPECT_TRUE(book().profiles("mill-daughters").front().is_default);
  EXPECT_EQ(desk().get(address)->status, 404);  // it waits no more

  const std::string result = desk().get(kept->get_header_value("Location"))->body;
  EXPECT_THAT(result, HasSubstr("2 lines in AW26; looked at: the whole range"));
  const auto undone =
      desk().post("/kept/undo", {{"shop", "mill-daughters", "", ""}, {"capture", "1", "", ""}});
  ASSERT_EQ(undone->status, 303) << undone->body;
  EXPECT_TRUE(book().captures("mill-daughters").empty());
  const std::string again = desk().get(undone->get_header_value("Location"))->body;
  EXPECT_THAT(again, HasSubstr("2 lines, 12 variants"));
  EXPECT_THAT(again, HasSubstr("aw26.csv"));
}

TEST_F(DeskAdd, APastedTableIsADocument) {
  const std::string address =
      hand_over(words({{"table", "name\tprice\tcurrency\r\nOlga top\t29.00\tGBP\r\n", "", ""}}));
  EXPECT_THAT(desk().get(address)->body, HasSubstr("1 line, 1 variant"));
  EXPECT_EQ(send("/held/keep", address)->status, 303);
  EXPECT_EQ(book().captures("mill-daughters").front().info.documents.front().name, "pasted.txt");
}

TEST_F(DeskAdd, ATextOfTermsIsReadWithoutACapture) {
  const std::string address = hand_over({{"name", "Mill", "", ""},
                                         {"currency", "GBP", "", ""},
                                         {"policy",
                                          "You can return items within 28 days of "
                                          "delivery for a full refund.",
                                          "", ""}});
  EXPECT_THAT(desk().get(address)->body, HasSubstr("28 days from delivery"));
  EXPECT_EQ(send("/held/keep", address)->status, 303);
  EXPECT_TRUE(book().find_shop("mill"));
  EXPECT_THAT(waiting_on("/add"), Not(HasSubstr("Not kept yet")));
}

TEST_F(DeskAdd, NothingHandedOverKeepsTheWords) {
  const auto answer = desk().post("/add", words());
  EXPECT_EQ(answer->status, 400);
  EXPECT_THAT(answer->body, HasSubstr("Choose files or a folder"));
  EXPECT_THAT(answer->body, HasSubstr("value=\"Mill &amp; Daughters\""));
  EXPECT_THAT(answer->body, HasSubstr("value=\"AW26\""));
}

TEST_F(DeskAdd, WrongWordsAreSaidAndTheFilesStay) {
  const std::string address = hand_over({{"season", "Crush 26", "", ""},
                                         {"on", "yesterday", "", ""},
                                         {"part", "some", "", ""},
                                         {"categories", "dreses", "", ""},
                                         {"documents", kRows, "aw26.csv", ""}});
  const auto seen = desk().get(address);
  EXPECT_EQ(seen->status, 400);
  EXPECT_THAT(seen->body, HasSubstr("Choose the shop, or write the name"));
  EXPECT_THAT(seen->body, HasSubstr("is not read as a season"));
  EXPECT_THAT(seen->body, HasSubstr("is no date"));
  EXPECT_THAT(seen->body, HasSubstr("dresses"));
  EXPECT_THAT(seen->body, HasSubstr("value=\"Crush 26\""));
  EXPECT_EQ(send("/held/keep", address)->status, 400);
  EXPECT_EQ(send("/held/words", address, words())->status, 303);
  EXPECT_THAT(desk().get(address)->body, HasSubstr("2 lines"));
}

TEST_F(DeskAdd, ADocumentThatIsNoneIsSaidAndCannotBeKept) {
  const std::string address =
      hand_over(words({{"documents", std::string("\x89PNG\r\n\x1A\n\0\0", 10), "a.png", ""}}));
  const std::string seen = desk().get(address)->body;
  EXPECT_THAT(seen, HasSubstr("Not a single line could be read"));
  EXPECT_THAT(seen, HasSubstr("a picture"));
  EXPECT_THAT(seen, Not(HasSubstr("Keep it in the book")));
  EXPECT_NE(send("/held/keep", address)->status, 303);
  EXPECT_TRUE(book().shops().empty());
  EXPECT_EQ(send("/held/drop", address)->status, 303);
  EXPECT_EQ(desk().get(address)->status, 404);
}

TEST_F(DeskAdd, AWordForATableThatIsNoneStaysInItsField) {
  const std::string address = hand_over_rows();
  const auto answer = send("/held/reading", address, {{"header-row", "third", "", ""}});
  EXPECT_EQ(answer->status, 400);
  EXPECT_THAT(answer->body, HasSubstr("value=\"third\""));
  EXPECT_THAT(answer->body, HasSubstr("is no line"));
}

TEST_F(DeskAdd, WhatWaitsOutlivesBrowserAndDesk) {
  const std::string address = hand_over_rows();
  EXPECT_THAT(waiting_on("/"), HasSubstr(address));
  EXPECT_THAT(waiting_on("/add"), HasSubstr("aw26.csv, AW26"));
  const OpenDesk later(folder_);
  EXPECT_THAT(later.get("/add")->body, HasSubstr(address));
  EXPECT_THAT(later.get(address)->body, HasSubstr("2 lines"));
}

TEST_F(DeskAdd, NoMoreThanSomeWait) {
  for (std::size_t i = 0; i < kMostHeld; ++i) hand_over_rows();
  const auto answer = desk().post("/add", words({{"documents", kRows, "one.csv", ""}}));
  EXPECT_EQ(answer->status, 400);
  EXPECT_THAT(answer->body, HasSubstr("Keep or drop one of them first"));
}

TEST_F(DeskAdd, KeptTwiceIsOneCapture) {
  const std::string first = hand_over_rows();
  const std::string second = hand_over_rows();
  EXPECT_EQ(send("/held/keep", first)->status, 303);
  EXPECT_EQ(send("/held/keep", first)->status, 404);
  const auto again = send("/held/keep", second);
  EXPECT_EQ(book().captures("mill-daughters").size(), 1U);
  EXPECT_THAT(desk().get(again->get_header_value("Location"))->body,
              HasSubstr("held exactly these documents already"));
}

TEST_F(DeskAdd, OnlyTheNewestIsTakenBack) {
  EXPECT_EQ(send("/held/keep", hand_over_rows())->status, 303);
  EXPECT_EQ(send("/held/keep", hand_over({{"shop", "mill-daughters", "", ""},
                                          {"season", "SS27", "", ""},
                                          {"on", "2027-02-01", "", ""},
                                          {"documents", kRows, "ss27.csv", ""}}))
                ->status,
            303);
  const auto undone =
      desk().post("/kept/undo", {{"shop", "mill-daughters", "", ""}, {"capture", "1", "", ""}});
  EXPECT_EQ(undone->status, 404);
  EXPECT_EQ(book().captures("mill-daughters").size(), 2U);
  EXPECT_THAT(desk().get("/kept?shop=mill-daughters&capture=1")->body,
              Not(HasSubstr("/kept/undo")));
}

TEST_F(DeskAdd, NamesOfFilesLeadNowhere) {
  const std::string address =
      hand_over(words({{"documents", kRows, "../../../../tmp/outside.csv", ""},
                       {"folder", kRows, "/etc/range/..\\..\\C:\\spring.csv", ""},
                       {"documents", kRows, kScript, ""}}));
  const std::string seen = desk().get(address)->body;
  EXPECT_THAT(seen, HasSubstr("tmp/outside.csv"));
  EXPECT_THAT(seen, HasSubstr("etc/range/spring.csv"));
  EXPECT_THAT(seen, Not(HasSubstr("../")));
  EXPECT_THAT(seen, Not(HasSubstr("<script>alert")));
  std::size_t files = 0;
  for (const auto& each : std::filesystem::recursive_directory_iterator(folder_.file(""))) {
    files += each.is_regular_file() && each.path().parent_path().filename() == id_in(address);
  }
  EXPECT_EQ(files, 4U);  // three documents by number, and what was said of them
  EXPECT_EQ(desk().get("/held?upload=../b.rangebook")->status, 404);
  EXPECT_EQ(desk().get("/held?upload=.")->status, 404);
}

TEST_F(DeskAdd, AFolderIsTakenAsOne) {
  const std::string address =
      hand_over(words({{"folder", kRows, "range/aw26.csv", ""},
                       {"folder", "GIF89a", "range/logo.gif", ""},
                       {"folder", "<html></html>", "range/dress.html", ""},
                       {"folder", "<html></html>", "range/dress_files/frame.html", ""}}));
  const std::string seen = desk().get(address)->body;
  EXPECT_THAT(seen, HasSubstr("Left aside: 1 part of 1 saved page"));
  EXPECT_THAT(seen, HasSubstr("1 file that is no document"));
}

TEST_F(DeskAdd, ScriptInEveryFieldStaysText) {
  Items items{{"documents", "name,<b>x</b>\n" + kScript + ",1\n", "a.csv", ""},
              {"table", kScript, "", ""},
              {"policy", kScript, "", ""}};
  for (const auto name : kUploadWords) items.push_back({std::string(name), kScript, "", ""});
  const std::string address = hand_over(items);
  Items readable = words({{"upload", id_in(address), "", ""}});
  const auto harmless = [](const std::string& page) {
    EXPECT_THAT(page, Not(HasSubstr("<script>alert")));
    EXPECT_THAT(page, Not(HasSubstr("<img")));
    EXPECT_THAT(page, Not(HasSubstr("<b>x")));
  };
  harmless(desk().get(address)->body);
  harmless(waiting_on("/add"));
  harmless(waiting_on("/"));
  EXPECT_EQ(desk().post("/held/words", readable)->status, 303);
  harmless(desk().get(address)->body);
  for (const char* name : {"delimiter", "decimal", "header-row", "encoding", "sheet", "means-1"}) {
    harmless(send("/held/reading", address, {{name, kScript, "", ""}})->body);
  }
  EXPECT_EQ(
      send("/held/reading", address, {{"column-1", kScript, "", ""}, {"means-1", "price", "", ""}})
          ->status,
      303);
  harmless(desk().get(address)->body);
  items.erase(items.begin(), items.begin() + 3);
  harmless(desk().post("/add", items)->body);
  harmless(
      desk().get(desk_address("/kept", {{"shop", kScript, {}}, {"capture", kScript, {}}}))->body);
}

TEST_F(DeskAdd, AFormOfAnotherSiteHoldsNothing) {
  auto headers = desk().own();
  headers.erase("Origin");
  headers.emplace("Origin", "https://shop.example");
  Items items = words({{"documents", kRows, "a.csv", ""}});
  items.push_back({"token", "x", "", ""});
  EXPECT_EQ(desk().client().Post("/add", headers, items)->status, 403);
  EXPECT_EQ(desk().client().Post("/add", desk().own(), items)->status, 403);
  EXPECT_FALSE(std::filesystem::exists(folder_.file("b.rangebook.held")));
}

TEST(DeskUploads, TooLargeByItsBytesIsTurnedAwayAndHoldsNothing) {
  const TempFolder folder;
  DeskLimits limits;
  limits.body = 1 << 16;
  const OpenDesk desk(folder, limits);
  const auto answer = desk.post("/add", {{"documents", std::string(1 << 17, 'x'), "a.csv", ""}});
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->status, 413);
  EXPECT_FALSE(std::filesystem::exists(folder.file("b.rangebook.held")));
}

TEST(DeskUploads, WhatIsBeingKeptIsSaid) {
  const TempFolder folder;
  OpenDesk desk(folder);
  EXPECT_EQ(desk.get("/keeping")->get_header_value("Location"), "/add");
  std::promise<void> go_on;
  ASSERT_TRUE(desk.desk().keeping().start([&](const ProgressCallback& progress) {
    progress(1, 4);
    go_on.get_future().wait();
    DeskAnswer answer;
    answer.go_to = "/kept";
    return answer;
  }));
  const auto page = desk.get("/keeping");
  EXPECT_THAT(page->body, HasSubstr("25 % is read"));
  EXPECT_EQ(page->get_header_value("Refresh"), "2");
  go_on.set_value();
  EXPECT_EQ(desk.get("/keeping")->get_header_value("Location"), "/kept");
}

TEST(DeskUploads, TooManyFilesAreSaid) {
  const TempFolder folder;
  DeskLimits limits;
  limits.fields = 8;
  const OpenDesk desk(folder, limits);
  const auto answer = desk.post("/add", Items(9, {"documents", "name\nOlga top\n", "a.csv", ""}));
  EXPECT_EQ(answer->status, 400);
  EXPECT_THAT(answer->body, HasSubstr("More than 8 files at once"));
}

TEST(DeskUploads, ABodyThatStopsIsLetGoAndHoldsNothing) {
  const TempFolder folder;
  DeskLimits limits;
  limits.threads = 1;
  limits.patience = 1;
  const OpenDesk desk(folder, limits);
  std::string head =
      "POST /add HTTP/1.1\r\nHost: 127.0.0.1:" + std::to_string(desk.port()) +
      "\r\nContent-Type: multipart/form-data; boundary=x\r\nContent-Length: 9999\r\n";
  for (const auto& [name, value] : desk.own()) head += name + ": " + value + "\r\n";
  const SlowClient slow(desk.port(),
                        head +
                            "\r\n--x\r\nContent-Disposition: form-data; name=\"documents\"; "
                            "filename=\"a.csv\"\r\n\r\nname\r\nOlga");
  const auto answer = desk.get("/add");  // waits until the only thread is free again
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->status, 200);
  EXPECT_THAT(answer->body, Not(HasSubstr("a.csv")));
}

TEST(DeskUploads, AScriptIsToldTheAddress) {
  const TempFolder folder;
  const OpenDesk desk(folder);
  const auto answer =
      desk.post("/add", {{"documents", kRows, "a.csv", ""}, {"by-script", "yes", "", ""}});
  EXPECT_EQ(answer->status, 200);
  EXPECT_THAT(answer->body, ::testing::StartsWith("/held?upload="));
  EXPECT_EQ(desk.get(answer->body)->status, 400);  // no shop was said
  EXPECT_EQ(desk.get("/add.js")->get_header_value("Content-Type"),
            "text/javascript; charset=utf-8");
}

}  // namespace
}  // namespace rangebook
