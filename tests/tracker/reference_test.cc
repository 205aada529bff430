// References: the same for the same parts, short, apart from each other, and forgiving of typing.
#include "tracker/reference.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace rangebook {
namespace {

using ::testing::ElementsAre;

TEST(Reference, DependsOnThePartsAndWhereTheyEnd) {
  EXPECT_EQ(long_reference({"pair", "ab"}), long_reference({"pair", "ab"}));
  EXPECT_NE(long_reference({"a", "bc"}), long_reference({"ab", "c"}));
  EXPECT_EQ(long_reference({"a"}).size(), 12U);
}

TEST(Reference, IsShownInFiveSignsUnlessTwoAreAlike) {
  EXPECT_THAT(shown_references({"abcdefghjkmn", "zbcdefghjkmn"}), ElementsAre("abcde", "zbcde"));
  EXPECT_THAT(shown_references({"abcdefghjkmn", "abcdefgzjkmn"}),
              ElementsAre("abcdefgh", "abcdefgz"));
  EXPECT_THAT(shown_references({"abcdefghjkmn", "abcdefghjkmn"}), ElementsAre("abcde", "abcde"));
}

// Crockford's base 32: O is read as 0, I and L as 1, in any case; U is no sign.
TEST(Reference, IsReadAsTyped) {
  EXPECT_EQ(typed_reference("K3F9A"), "k3f9a");
  EXPECT_EQ(typed_reference("oil4"), "0114");
  EXPECT_EQ(typed_reference("k3f"), "");
  EXPECT_EQ(typed_reference("maya dress"), "");
  EXPECT_EQ(typed_reference("tunic"), "");
}

}  // namespace
}  // namespace rangebook
