// Undertone, value, chroma, family, nearly one colour. Common practice, no source: what stylists
// call these colours. Values are those of schema/tables/colours.tsv.
#include "tracker/colour_traits.h"

#include <gtest/gtest.h>

#include <string>

#include "tracker/colour_reader.h"

namespace rangebook {
namespace {

Srgb value(const std::string& name) {
  const auto colour = colour_value(name);
  if (!colour) ADD_FAILURE() << name << " has no value";
  return colour.value_or(Srgb{});
}

ColourTraits traits(const std::string& name) { return traits_of(value(name)); }

TEST(Undertone, YellowBasedIsWarmAndBlueBasedCool) {
  for (const auto* name : {"camel", "rust", "terracotta", "mustard", "olive", "tomato red", "coral",
                           "cream", "chocolate", "peach", "gold"}) {
    EXPECT_EQ(traits(name).undertone, Undertone::warm) << name;
  }
  for (const auto* name : {"navy", "cobalt", "raspberry", "fuchsia", "lilac", "emerald",
                           "bottle green", "burgundy", "ice blue", "plum", "pale pink"}) {
    EXPECT_EQ(traits(name).undertone, Undertone::cool) << name;
  }
  for (const auto* name : {"black", "white", "grey", "charcoal", "red", "green", "silver"}) {
    EXPECT_EQ(traits(name).undertone, Undertone::neutral) << name;
  }
}

TEST(ColourValue, LightMediumDeep) {
  for (const auto* name : {"white", "cream", "mint", "baby blue", "butter", "blush"})
    EXPECT_EQ(traits(name).value, ColourValue::light) << name;
  for (const auto* name : {"red", "denim", "terracotta", "mustard", "mid grey", "hot pink"})
    EXPECT_EQ(traits(name).value, ColourValue::medium) << name;
  for (const auto* name : {"navy", "black", "chocolate", "burgundy", "forest green", "aubergine"})
    EXPECT_EQ(traits(name).value, ColourValue::deep) << name;
}

TEST(ColourChroma, ClearMutedNone) {
  for (const auto* name : {"red", "cobalt", "emerald", "mustard", "fuchsia", "orange"})
    EXPECT_EQ(traits(name).chroma, ColourChroma::clear) << name;
  for (const auto* name : {"sage", "dusty pink", "taupe", "mauve", "petrol", "oatmeal"})
    EXPECT_EQ(traits(name).chroma, ColourChroma::muted) << name;
  for (const auto* name : {"black", "white", "charcoal"})
    EXPECT_EQ(traits(name).chroma, ColourChroma::none) << name;
}

TEST(HueFamily, PlainNamesLieInTheirFamily) {
  for (const auto* name : {"white", "grey", "black", "beige", "brown", "red", "pink", "orange",
                           "yellow", "green", "teal", "blue", "purple"}) {
    EXPECT_EQ(to_string(traits(name).family), name);
  }
  EXPECT_EQ(traits("ecru").family, HueFamily::beige);
  EXPECT_EQ(traits("ink").family, HueFamily::blue);
  EXPECT_EQ(traits("oxblood").family, HueFamily::red);
  EXPECT_EQ(traits("slate").family, HueFamily::grey);
  EXPECT_EQ(traits("apricot").family, HueFamily::orange);
  EXPECT_EQ(traits("olive").family, HueFamily::green);
}

TEST(NearlyOneColour, InkAndNavy) {
  EXPECT_TRUE(nearly_one_colour(value("ink"), value("navy")));
  EXPECT_TRUE(nearly_one_colour(value("ivory"), value("cream")));
  EXPECT_FALSE(nearly_one_colour(value("black"), value("navy")));
  EXPECT_FALSE(nearly_one_colour(value("bottle green"), value("emerald")));
  EXPECT_EQ(difference_tenths(value("navy"), value("navy")), 0);
}

}  // namespace
}  // namespace rangebook
