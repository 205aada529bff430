// Colour lists, keys and values. CSS values from tests/checks/css-colours.tsv (W3C CSS Color 4).
#include "tracker/colour_parser.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <map>
#include <string>
#include <vector>

#include "schema/embedded.h"
#include "tests/check_rows.h"

namespace rangebook {
namespace {

std::string hex_of(std::optional<Srgb> colour) {
  if (!colour) return "none";
  char text[8];
  std::snprintf(text, sizeof text, "#%02x%02x%02x", colour->red, colour->green, colour->blue);
  return text;
}

std::map<std::string, std::string> css_colours() {
  std::map<std::string, std::string> colours;
  for (const auto& row : check_rows("css-colours.tsv")) colours.emplace(row.at(0), row.at(1));
  return colours;
}

TEST(ColourTable, HoldsEveryCssColourExactly) {
  std::map<std::string, std::string> table;
  for (const auto& row : table_rows("tables/colours.tsv")) {
    if (row.at(2) == "css") table.emplace(row[0], row[1]);
  }
  EXPECT_EQ(table.size(), 148U);
  EXPECT_EQ(table, css_colours());
}

TEST(ColourValue, CssNamesThatShopsUseAlike) {
  const auto css = css_colours();
  for (const auto* name : {"aliceblue", "tomato", "turquoise", "steelblue", "rebeccapurple",
                           "lightgoldenrodyellow", "aqua"}) {
    EXPECT_EQ(hex_of(colour_value(name)), css.at(name)) << name;
  }
  EXPECT_EQ(hex_of(colour_value("Dark Slate Gray")), css.at("darkslategray"));
  EXPECT_EQ(hex_of(colour_value("dark-slate-grey")), css.at("darkslategrey"));
}

// Common practice, no source: what shops call plum is a deep colour, CSS plum a pale one.
TEST(ColourValue, RetailTermsWinOverCss) {
  for (const auto* name : {"plum", "chocolate", "navy", "khaki"}) {
    EXPECT_NE(hex_of(colour_value(name)), css_colours().at(name)) << name;
  }
  EXPECT_EQ(colour_value("Navy"), colour_value("navy blue"));
}

TEST(ColourValue, KnownNameWithinTheText) {
  EXPECT_EQ(colour_value("washed navy"), colour_value("navy"));
  EXPECT_EQ(colour_value("pale dusty pink"), colour_value("Dusty Pink"));
  EXPECT_NE(colour_value("dusty pink"), colour_value("pink"));
  EXPECT_EQ(colour_value("Navy/White stripe"), colour_value("navy"));
  EXPECT_EQ(colour_value("black and white"), colour_value("black"));
  EXPECT_EQ(colour_value("Ecru melange"), colour_value("ecru"));
  EXPECT_EQ(colour_value("Dunkelblau"), colour_value("dark blue"));
  EXPECT_EQ(colour_value("Harbour"), std::nullopt);
  EXPECT_EQ(colour_value(""), std::nullopt);
  EXPECT_EQ(colour_value("/"), std::nullopt);
  EXPECT_EQ(colour_value(std::string(300, ' ') + "navy"), std::nullopt);
}

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
