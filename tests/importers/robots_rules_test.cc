// RFC 9309: the examples of its sections 5.1 and 5.2, the table of paths in 2.2.2, the special
// characters in 2.2.3, and what 2.1, 2.2.1 and 2.5 say of groups, names and size.
#include "importers/robots_rules.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

bool may(std::string_view text, std::string_view agent, std::string_view path) {
  return RobotsRules::read(text, agent).forbids(path) == nullptr;
}

constexpr std::string_view kSimple =
    "User-Agent: *\n"
    "Disallow: *.gif$\n"
    "Disallow: /example/\n"
    "Allow: /publications/\n"
    "\n"
    "User-Agent: foobot\n"
    "Disallow:/\n"
    "Allow:/example/page.html\n"
    "Allow:/example/allowed.gif\n"
    "\n"
    "User-Agent: barbot\n"
    "User-Agent: bazbot\n"
    "Disallow: /example/page.html\n"
    "\n"
    "User-Agent: quxbot\n";

TEST(RobotsRules, TheSimpleExample) {
  EXPECT_FALSE(may(kSimple, "anybot", "/a/picture.gif"));
  EXPECT_TRUE(may(kSimple, "anybot", "/a/picture.gif?big"));
  EXPECT_FALSE(may(kSimple, "anybot", "/example/"));
  EXPECT_TRUE(may(kSimple, "anybot", "/publications/x"));
  EXPECT_FALSE(may(kSimple, "foobot", "/publications/x"));
  EXPECT_TRUE(may(kSimple, "FooBot", "/example/page.html"));
  EXPECT_TRUE(may(kSimple, "foobot", "/example/allowed.gif"));
  for (const char* agent : {"barbot", "bazbot"}) {
    EXPECT_FALSE(may(kSimple, agent, "/example/page.html"));
    EXPECT_TRUE(may(kSimple, agent, "/example/picture.gif"));
  }
  EXPECT_TRUE(may(kSimple, "quxbot", "/example/page.html"));
}

TEST(RobotsRules, TheLongestMatchDecides) {
  constexpr std::string_view kLongest =
      "User-Agent: foobot\nAllow: /example/page/\nDisallow: /example/page/disallowed.gif\n";
  EXPECT_FALSE(may(kLongest, "foobot", "/example/page/disallowed.gif"));
  EXPECT_TRUE(may(kLongest, "foobot", "/example/page/"));
  EXPECT_TRUE(may("User-agent: *\nDisallow: /a\nAllow: /a\n", "b", "/a"));
  EXPECT_TRUE(may("User-agent: *\nAllow: /a\nDisallow: /a\n", "b", "/a"));
}

TEST(RobotsRules, PathsAreComparedEncoded) {
  const auto same = [](std::string_view pattern, std::string_view path) {
    const std::string text = "User-agent: *\nDisallow: " + std::string(pattern) + "\n";
    return !may(text, "b", path);
  };
  EXPECT_TRUE(same("/foo/bar?baz=quz", "/foo/bar?baz=quz"));
  EXPECT_TRUE(same("/foo/bar/\xE3\x83\x84", "/foo/bar/%E3%83%84"));
  EXPECT_TRUE(same("/foo/bar/%e3%83%84", "/foo/bar/\xE3\x83\x84"));
  EXPECT_TRUE(same("/foo/bar/%62%61%7A", "/foo/bar/baz"));
  EXPECT_FALSE(same("/foo/bar%2Fbaz", "/foo/bar/baz"));
}

TEST(RobotsRules, SpecialCharacters) {
  const std::string text =
      "User-agent: * # for everyone\nDisallow: /this/*/exactly\nDisallow: /end$ # only this\n"
      "Disallow: /file-with-a-%2A.html\n";
  EXPECT_FALSE(may(text, "b", "/this/and/exactly/so"));
  EXPECT_TRUE(may(text, "b", "/this/exactly"));
  EXPECT_FALSE(may(text, "b", "/end"));
  EXPECT_TRUE(may(text, "b", "/ending"));
  EXPECT_FALSE(may(text, "b", "/file-with-a-%2A.html"));
  EXPECT_TRUE(may(text, "b", "/file-with-a-x.html"));
}

TEST(RobotsRules, GroupsOfOneNameAreOne) {
  const std::string text =
      "user-agent: foobot\nSitemap: http://a.example/map\ndisallow: /a\nunknown: x\n\n"
      "user-agent: other\ndisallow: /b\n\nuser-agent: FOOBOT/2.0\r\ndisallow: /c\r\n";
  EXPECT_FALSE(may(text, "foobot", "/a"));
  EXPECT_TRUE(may(text, "foobot", "/b"));
  EXPECT_FALSE(may(text, "foobot", "/c"));
  EXPECT_EQ(RobotsRules::read(text, "foobot").forbids("/c")->line, 10U);
}

TEST(RobotsRules, NothingAndNonsenseForbidNothing) {
  for (const char* text : {"", "\xEF\xBB\xBF", "Disallow: /\n", "User-agent: *\nDisallow:\n",
                           "<!doctype html><p>Not found</p>", ":::\n::"}) {
    EXPECT_TRUE(may(text, "b", "/a")) << text;
  }
  EXPECT_FALSE(may("\xEF\xBB\xBFUser-agent: *\nDisallow: /", "b", "/a"));
  EXPECT_TRUE(may("User-agent: *\nDisallow: /", "b", "/robots.txt"));
}

TEST(RobotsRules, LongFilesAndManyStarsTakeNoTime) {
  std::string text = "User-agent: *\nDisallow: /a\n";
  text += std::string(std::size_t{600} * 1024, '#') + "\nDisallow: /late\n";
  EXPECT_FALSE(may(text, "b", "/a"));
  EXPECT_TRUE(may(text, "b", "/late"));
  std::string stars;
  for (int i = 0; i < 2000; ++i) stars += "*a";
  EXPECT_TRUE(
      may("User-agent: *\nDisallow: /" + stars + "b$\n", "b", "/" + std::string(4000, 'a')));
}

}  // namespace
}  // namespace rangebook
