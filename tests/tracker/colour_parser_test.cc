// Colour lists and keys.
#include "tracker/colour_parser.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace rangebook {
namespace {

TEST(SplitColours, ListsAndTwoTones) {
  using Colours = std::vector<std::string>;
  EXPECT_EQ(split_colours("navy|ecru"), (Colours{"navy", "ecru"}));
  EXPECT_EQ(split_colours(" navy ; ecru |"), (Colours{"navy", "ecru"}));
  EXPECT_EQ(split_colours("black/white"), Colours{"black/white"});
  EXPECT_EQ(split_colours("black, white"), Colours{"black, white"});
  EXPECT_EQ(split_colours(""), Colours{});
  EXPECT_EQ(split_colours("||"), Colours{});
}

TEST(ColourKey, SpellingsOfOneColour) {
  EXPECT_EQ(colour_key("Dark-Gray"), colour_key("dark  grey"));
  EXPECT_EQ(colour_key("Off White"), colour_key("off-white"));
  EXPECT_EQ(colour_key("Black / White"), colour_key("black/white"));
  EXPECT_EQ(colour_key("\xC3\x89"
                       "cru"),
            colour_key("ecru"));
  EXPECT_NE(colour_key("navy"), colour_key("navy blue"));
  EXPECT_EQ(colour_key(" Navy "), "navy");
  EXPECT_EQ(colour_key(colour_key("A - B/ C")), colour_key("A - B/ C"));
}

}  // namespace
}  // namespace rangebook
