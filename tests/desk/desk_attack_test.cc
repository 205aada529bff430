// The attacks of OWASP's cheat sheets on cross-site request forgery, path traversal, cross-site
// scripting and denial of service, tried on an open desk. The wording is our own.
#include <gmock/gmock.h>

#include <atomic>
#include <map>

#include "tests/desk/open_desk.h"
#include "tests/desk/slow_client.h"

namespace rangebook {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class DeskAttacks : public ::testing::Test {
 protected:
  TempFolder folder_;
};

TEST_F(DeskAttacks, WithoutTheKeyNothingIsSaid) {
  const OpenDesk desk(folder_);
  EXPECT_EQ(desk.client().Get("/")->status, 403);
  EXPECT_EQ(desk.client().Get("/?key=guess")->status, 403);
  EXPECT_EQ(desk.client().Get("/desk.css")->status, 403);
  EXPECT_EQ(desk.get("/")->status, 200);
}

TEST_F(DeskAttacks, AForeignHostIsTurnedAway) {
  const OpenDesk desk(folder_);
  auto headers = desk.own();
  headers.emplace("Host", "shop.example:" + std::to_string(desk.port()));
  EXPECT_EQ(desk.client().Get("/", headers)->status, 403);
}

TEST_F(DeskAttacks, APostOfAnotherSiteIsTurnedAway) {
  const OpenDesk desk(folder_);
  auto headers = desk.own();
  headers.erase("Origin");
  EXPECT_EQ(desk.client().Post("/own", headers, httplib::MultipartFormDataItems{})->status, 403);
  headers.emplace("Origin", "https://shop.example");
  EXPECT_EQ(desk.client().Post("/own", headers, httplib::MultipartFormDataItems{})->status, 403);
  EXPECT_EQ(desk.post("/own")->status, 303);
}

TEST_F(DeskAttacks, AFormWithoutItsTokenIsTurnedAway) {
  OpenDesk desk(folder_);
  const auto send = [&desk](const std::string& token) {
    return desk.client().Post("/own", desk.own(),
                              httplib::MultipartFormDataItems{{"token", token, "", ""}});
  };
  EXPECT_EQ(send("")->status, 403);
  EXPECT_EQ(send(desk.desk().tokens().of("/demo"))->status, 403);
  EXPECT_EQ(desk.client().Post("/own", desk.own(), "token=x", "text/plain")->status, 415);
}

TEST_F(DeskAttacks, NoPathLeadsToAFile) {
  const OpenDesk desk(folder_);
  for (const char* path : {"/../etc/passwd", "/%2e%2e/etc/passwd", "/..%2f..%2fetc/passwd",
                           "//etc/passwd", "/b.rangebook", "/desk.css/../b.rangebook", "/%00"}) {
    EXPECT_EQ(desk.get(path)->status, 404) << path;
  }
}

TEST_F(DeskAttacks, OtherMethodsAreTurnedAway) {
  const OpenDesk desk(folder_);
  EXPECT_EQ(desk.client().Delete("/", desk.own())->status, 405);
  EXPECT_EQ(desk.client().Put("/", desk.own(), "x", "text/plain")->status, 405);
}

TEST_F(DeskAttacks, AFormThatIsTooLargeIsTurnedAwayWithAMessage) {
  DeskLimits limits;
  limits.body = 1 << 20;
  const OpenDesk desk(folder_, limits);
  auto headers = desk.own();
  headers.emplace("Content-Type", "multipart/form-data; boundary=x");
  headers.emplace("Content-Length", std::to_string((1 << 20) + 1));
  const auto answer = desk.client().Post("/own", headers);
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->status, 413);
  EXPECT_THAT(answer->body, HasSubstr("more than 1 MB"));
}

TEST_F(DeskAttacks, SlowClientsAreLetGo) {
  DeskLimits limits;
  limits.threads = 1;
  limits.patience = 1;
  const OpenDesk desk(folder_, limits);
  const SlowClient slow(desk.port(), "GET / HTTP/1.1\r\nHost: 127");
  const auto answer = desk.get("/");  // waits until the only thread is free again
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->status, 200);
}

TEST_F(DeskAttacks, ScriptInEveryTextStaysText) {
  const std::string script = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>";
  const std::string row =
      "\"AB<b>1\",\"<script>alert(1)</script>\",dresses,"
      "\"<img src=x onerror=alert(1)>\",8-18,";
  keep_rows(folder_, "AW25", "2025-09-01", row + "49.00,GBP\n");
  keep_rows(folder_, "AW26", "2026-09-01", row + "59.00,GBP\n");
  const OpenDesk desk(folder_);
  for (const char* page :
       {"/", "/brief", "/moves", "/prices", "/sizes", "/line", "/reach", "/order"}) {
    std::vector<DeskField> fields{{"shop", "mill", {}}, {"line", "AB<b>1", {}}};
    const auto plain = desk.get(desk_address(page, fields));
    EXPECT_EQ(plain->status, 200) << page;
    EXPECT_THAT(plain->body, Not(HasSubstr("<script>alert"))) << page;
    EXPECT_THAT(plain->body, Not(HasSubstr("<img"))) << page;
    for (const char* name : {"words", "category", "kind", "size", "system", "keep", "back",
                             "currency", "bought", "region", "from", "to", "capture", "format"}) {
      auto more = fields;
      more.push_back({name, script, {}});
      const auto asked = desk.get(desk_address(page, more));
      EXPECT_THAT(asked->body, Not(HasSubstr("<script>alert"))) << page << " " << name;
      EXPECT_THAT(asked->body, Not(HasSubstr("<img"))) << page << " " << name;
      EXPECT_THAT(asked->get_header_value("Content-Security-Policy"),
                  HasSubstr("default-src 'none'"));
    }
  }
}

/// Pages with the fields they read; the last of them may be refused, but never written as it came.
TEST_F(DeskAttacks, ScriptInTheFieldsOfAPageStaysText) {
  const std::string script = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>";
  keep_rows(folder_, "AW26", "2026-09-01",
            "M1,<script>alert(1)</script>,dresses,\"<img src=x>\",8-18,49.00,GBP\n");
  const OpenDesk desk(folder_);
  const std::map<std::string, std::vector<std::string>> pages{
      {"/links", {"later", "pair", "shop"}},
      {"/links/said", {"shop"}},
      {"/lines", {"words", "category", "capture", "shop"}},
      {"/picks", {"theme", "shop"}},
      {"/picks/notes", {"theme"}},
      {"/picks/keep", {"theme", "note", "review", "on", "palette", "capture", "line"}},
      {"/picks/words", {"word", "list"}},
      {"/picks/word", {"word", "list"}},
      {"/due", {"on", "every", "ahead"}}};
  for (const auto& [page, names] : pages) {
    for (std::size_t bad = 0; bad <= names.size(); ++bad) {
      std::vector<DeskField> fields{
          {"shop", "mill", {}}, {"line", "M1", {}}, {"list", "palette", {}}};
      if (bad < names.size()) fields.insert(fields.begin(), {names[bad], script, {}});
      const auto asked = desk.get(desk_address(page, fields));
      EXPECT_LT(asked->status, 500) << page;
      EXPECT_THAT(asked->body, Not(HasSubstr("<script>alert"))) << page << " " << bad;
      EXPECT_THAT(asked->body, Not(HasSubstr("<img"))) << page << " " << bad;
    }
  }
}

TEST_F(DeskAttacks, ManyConnectionsAreAllAnswered) {
  DeskLimits limits;
  limits.waiting = 4;
  const OpenDesk desk(folder_, limits);
  std::atomic<int> answered{0};
  std::vector<std::thread> visitors;
  for (int visitor = 0; visitor < 16; ++visitor) {
    visitors.emplace_back([&] {
      for (int i = 0; i < 10; ++i) {
        const auto answer = desk.get("/");
        if (answer && answer->status == 200) ++answered;
      }
    });
  }
  for (auto& visitor : visitors) visitor.join();
  EXPECT_EQ(answered.load(), 160);
}

}  // namespace
}  // namespace rangebook
