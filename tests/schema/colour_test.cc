// Names of the words for colours.
#include "schema/colour.h"

#include <gtest/gtest.h>

#include <set>
#include <string_view>

namespace rangebook {
namespace {

TEST(ColourWords, EveryFamilyHasANameOfItsOwn) {
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < kHueFamilies; ++i) names.insert(to_string(HueFamily(i)));
  EXPECT_EQ(names.size(), kHueFamilies);
  EXPECT_FALSE(names.contains("?"));
}

TEST(ColourWords, HexInLowerCase) { EXPECT_EQ(to_string(Srgb{31, 42, 204}), "#1f2acc"); }

}  // namespace
}  // namespace rangebook
