// The nearest word to a mistyped one.
#include "schema/nearest_word.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

const std::vector<std::string> kVerbs{"capture", "changes", "check", "shop"};

TEST(NearestWord, OneSlipIsForgiven) {
  EXPECT_EQ(nearest_word("captur", kVerbs), "capture");
  EXPECT_EQ(nearest_word("cahnges", kVerbs), "changes");  // neighbours swapped
  EXPECT_EQ(nearest_word("shopp", kVerbs), "shop");
  EXPECT_EQ(nearest_word("check", kVerbs), "check");
}

TEST(NearestWord, AnotherWordIsNotGuessed) {
  EXPECT_EQ(nearest_word("revisit", kVerbs), std::nullopt);
  EXPECT_EQ(nearest_word("", kVerbs), std::nullopt);
  EXPECT_EQ(did_you_mean("xyz", kVerbs), "");
}

}  // namespace
}  // namespace rangebook
