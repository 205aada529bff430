// Relative addresses against the examples of the standard.
#include "importers/page_address.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

// Source: RFC 3986, section 5.4.1 (those without dot segments), base "http://a/b/c/d;p?q". From
// memory.
TEST(PageAddress, FollowsTheExamplesOfRfc3986) {
  constexpr std::string_view base = "http://a/b/c/d;p?q";
  for (const auto& [reference, expected] : {std::pair{"g:h", "g:h"},
                                            {"g", "http://a/b/c/g"},
                                            {"g/", "http://a/b/c/g/"},
                                            {"/g", "http://a/g"},
                                            {"//g", "http://g"},
                                            {"?y", "http://a/b/c/d;p?y"},
                                            {"g?y", "http://a/b/c/g?y"},
                                            {"#s", "http://a/b/c/d;p?q#s"},
                                            {"g#s", "http://a/b/c/g#s"},
                                            {";x", "http://a/b/c/;x"},
                                            {"g;x?y#s", "http://a/b/c/g;x?y#s"}}) {
    EXPECT_EQ(resolve_address(reference, base), expected);
  }
}

TEST(PageAddress, HostsWithoutAPathGetOne) {
  EXPECT_EQ(resolve_address("g", "https://shop.example"), "https://shop.example/g");
  EXPECT_EQ(resolve_address("/g", "https://shop.example"), "https://shop.example/g");
  EXPECT_EQ(resolve_address("g", "https://shop.example/"), "https://shop.example/g");
  EXPECT_EQ(resolve_address("g", "https://shop.example?q"), "https://shop.example/g");
}

TEST(PageAddress, WithoutABaseNothingChanges) {
  EXPECT_EQ(resolve_address("/g", ""), "/g");
  EXPECT_EQ(resolve_address("g", "shop.example/x"), "g");
  EXPECT_EQ(resolve_address("", "https://shop.example"), "");
}

}  // namespace
}  // namespace rangebook
