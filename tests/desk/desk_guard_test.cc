// Who is a stranger. Host: RFC 9110 section 7.2; Origin: RFC 6454 section 7; Sec-Fetch-Site: W3C
// Fetch Metadata Request Headers, section 2.3; cookies: RFC 6265 section 4.2.1.
#include "tracker/desk/desk_guard.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

bool is_stranger(const DeskCaller& caller) { return stranger(caller, 4711).has_value(); }

TEST(DeskGuard, OwnPagesAreAnswered) {
  EXPECT_FALSE(is_stranger({"GET", "127.0.0.1:4711", "", "", ""}));
  EXPECT_FALSE(is_stranger({"GET", "localhost:4711", "", "none", ""}));
  EXPECT_FALSE(is_stranger({"POST", "127.0.0.1:4711", "http://127.0.0.1:4711", "same-origin", ""}));
  EXPECT_FALSE(is_stranger({"POST", "127.0.0.1:4711", "", "same-origin", ""}));
}

TEST(DeskGuard, AForeignNameForThisMachineIsNot) {
  for (const char* host : {"", "127.0.0.1", "127.0.0.1:80", "shop.example:4711", "[::1]:4711",
                           "127.0.0.1:4711.example", "localhost:47110", "LOCALHOST.example:4711"}) {
    EXPECT_TRUE(is_stranger({"GET", host, "", "", ""})) << host;
  }
}

TEST(DeskGuard, AnotherSiteIsNot) {
  const std::string host = "127.0.0.1:4711";
  EXPECT_TRUE(is_stranger({"POST", host, "https://shop.example", "", ""}));
  EXPECT_TRUE(is_stranger({"POST", host, "null", "", ""}));
  EXPECT_TRUE(is_stranger({"POST", host, "http://127.0.0.1:80", "same-site", ""}));
  EXPECT_TRUE(is_stranger({"POST", host, "http://127.0.0.1:4711", "cross-site", ""}));
  EXPECT_TRUE(is_stranger({"POST", host, "http://localhost:4711", "", ""}));
  EXPECT_TRUE(is_stranger({"GET", host, "", "cross-site", ""}));
  EXPECT_TRUE(is_stranger({"GET", host, "", "same-site", ""}));
}

TEST(DeskGuard, APostSaysWhereItComesFrom) {
  EXPECT_TRUE(is_stranger({"POST", "127.0.0.1:4711", "", "", ""}));
  EXPECT_TRUE(is_stranger({"POST", "127.0.0.1:4711", "", "none", ""}));
}

TEST(DeskGuard, CookiesByTheirWholeName) {
  EXPECT_EQ(cookie_value("desk1=a; desk=b", "desk"), "b");
  EXPECT_EQ(cookie_value("xdesk=a", "desk"), "");
  EXPECT_EQ(cookie_value("desk=", "desk"), "");
  EXPECT_EQ(cookie_value("", "desk"), "");
}

TEST(DeskGuard, SecretsAreLongAndDifferent) {
  const std::string one = new_secret();
  EXPECT_EQ(one.size(), 64U);
  EXPECT_NE(one, new_secret());
  EXPECT_TRUE(same_secret(one, one));
  EXPECT_FALSE(same_secret("", ""));
  EXPECT_FALSE(same_secret(one.substr(1), one));
}

}  // namespace
}  // namespace rangebook
