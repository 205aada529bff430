// What colour names mean. CSS values from tests/checks/css-colours.tsv (W3C CSS Color 4). What
// shops call a colour is common practice, no source; languages other than English from memory.
#include "tracker/colour_reader.h"

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <vector>

#include "schema/embedded.h"
#include "tests/check_rows.h"
#include "tracker/colour_table.h"
#include "tracker/colour_traits.h"

namespace rangebook {
namespace {

using Kind = ColourReading::Kind;

/// `#1f2a44`, `~` before it where it is approximate; `several 2`, `print 1`, `unknown`.
std::string read(const std::string& name) {
  const ColourReading reading = read_colour(name);
  const auto count = std::to_string(reading.colours.size());
  switch (reading.kind) {
    case Kind::unknown:
      return "unknown";
    case Kind::single:
      return (reading.approximate ? "~" : "") + to_string(reading.colours.at(0));
    case Kind::several:
      return "several " + count;
    case Kind::print:
      return "print " + count;
  }
  return {};
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

// A word of another language has the value of an English row, so no language has colours of its
// own.
TEST(ColourTable, WordsOfOtherLanguagesHaveTheValueOfAnEnglishName) {
  std::map<std::string_view, std::string_view> english;
  for (const auto& row : table_rows("tables/colours.tsv")) {
    if (!row.at(2).starts_with("word-")) english.emplace(row[1], row[0]);
  }
  for (const auto& row : table_rows("tables/colours.tsv")) {
    if (!row.at(2).starts_with("word-")) continue;
    EXPECT_TRUE(english.contains(row[1])) << row[0];
  }
}

TEST(ReadColour, EveryNameOfTheTableIsRead) {
  for (const auto& row : table_rows("tables/colours.tsv")) {
    EXPECT_EQ(read_colour(row.at(0)).kind, Kind::single) << row[0];
  }
}

TEST(ReadColour, CssNamesThatShopsUseAlike) {
  const auto css = css_colours();
  for (const auto* name : {"aliceblue", "rebeccapurple", "lightgoldenrodyellow", "papayawhip"}) {
    EXPECT_EQ(read(name), css.at(name)) << name;
  }
  EXPECT_EQ(read("Dark Slate Gray"), css.at("darkslategray"));
  EXPECT_EQ(read("dark-slate-grey"), css.at("darkslategrey"));
}

// What shops call plum is a deep colour, CSS plum a pale one.
TEST(ReadColour, RetailTermsWinOverCss) {
  for (const auto* name : {"plum", "chocolate", "navy", "khaki"}) {
    EXPECT_NE(read(name), css_colours().at(name)) << name;
  }
  EXPECT_EQ(read("Navy"), read("navy blue"));
}

TEST(ReadColour, AValueIsTakenAsItStands) {
  EXPECT_EQ(read("#1F2A44"), "#1f2a44");
  EXPECT_EQ(read("#abc"), "#aabbcc");
  EXPECT_EQ(read("Harbour (#1f2a44)"), "#1f2a44");
  EXPECT_EQ(read("#12"), "unknown");
  EXPECT_EQ(read("#1f2a4"), "unknown");
}

TEST(ReadColour, UnknownNamesStayUnknown) {
  for (const auto* name : {"Harbour", "", "/", "Navy Pier", "Rose Garden", "light", "melange",
                           "Tumble", "12", "\xff\xfe", "Whisper"}) {
    EXPECT_EQ(read(name), "unknown") << name;
  }
  EXPECT_EQ(read(std::string(300, ' ') + "navy"), "unknown");
}

TEST(ReadColour, AnUnknownDescriptionLeavesItApproximate) {
  EXPECT_EQ(read("Harbour blue"), "~" + read("blue"));
  EXPECT_EQ(read("bleu orage"), "~" + read("blue"));
  EXPECT_EQ(read("rojo atardecer"), "~" + read("red"));
  EXPECT_EQ(colour_value("Harbour blue"), std::nullopt);
}

TEST(ReadColour, WordsBesideAColourChangeIt) {
  const auto lightness = [](const char* name) {
    return lch_of(lab_of(*colour_value(name))).lightness;
  };
  const auto chroma = [](const char* name) { return lch_of(lab_of(*colour_value(name))).chroma; };
  EXPECT_GT(lightness("light olive"), lightness("olive"));
  EXPECT_LT(lightness("dark olive"), lightness("olive"));
  EXPECT_LT(chroma("dusty coral"), chroma("coral"));
  EXPECT_GT(chroma("bright coral"), chroma("coral"));
  EXPECT_GT(lightness("washed navy"), lightness("navy"));
  EXPECT_EQ(read("navy marl"), read("navy melange"));
  EXPECT_EQ(read("Matt black"), read("black"));
  EXPECT_EQ(read("01 Navy"), read("navy"));
  EXPECT_NE(read("pale dusty pink"), read("dusty pink"));
}

// Exact values, so that a change of the arithmetic is noticed: white, black and grey by hand.
TEST(WithEffect, WholeNumbers) {
  const Srgb red{200, 0, 0};
  EXPECT_EQ(with_effect(red, {ColourEffect::lighten, 50}), (Srgb{228, 128, 128}));
  EXPECT_EQ(with_effect(red, {ColourEffect::darken, 50}), (Srgb{100, 0, 0}));
  EXPECT_EQ(with_effect(red, {ColourEffect::mute, 100}), (Srgb{43, 43, 43}));
  EXPECT_EQ(with_effect(red, {ColourEffect::brighten, 100}), (Srgb{255, 0, 0}));
  EXPECT_EQ(with_effect(red, {ColourEffect::keep, 0}), red);
}

TEST(ReadColour, OtherLanguages) {
  EXPECT_EQ(read("Dunkelblau"), read("dark blue"));
  EXPECT_EQ(read("T\xC3\xBCrkis"), read("turquoise"));
  EXPECT_EQ(read("vert sapin"), read("pine"));
  EXPECT_EQ(read("azul marino"), read("navy"));
  EXPECT_EQ(read("blu notte"), read("midnight"));
  EXPECT_EQ(read("donkergroen"), read("verde oscuro"));
  EXPECT_EQ(read("vert d'eau"), read("mint"));
  EXPECT_EQ(read("blaumeliert"), read("bleu chin\xC3\xA9"));
}

TEST(ReadColour, TwoNamesOfOneFamilyAreTheFinerOne) {
  EXPECT_EQ(read("ruby red"), read("ruby"));
  EXPECT_EQ(read("sapphire blue"), read("sapphire"));
  EXPECT_EQ(read("rouge grenat"), read("garnet"));
  EXPECT_EQ(read("lime yellow"), "~" + read("yellow"));
  EXPECT_EQ(read("black white"), "several 2");
}

TEST(ReadColour, SeveralColoursSaySo) {
  for (const auto* name : {"navy/white", "black and white", "Navy, Ecru", "rot & wei\xC3\x9F",
                           "bleu et blanc", "azul y blanco", "nero/bianco", "zwart met wit"}) {
    EXPECT_EQ(read(name), "several 2") << name;
  }
  EXPECT_EQ(read("navy/Harbour"), "several 1");
  EXPECT_EQ(read("Harbour/Tumble"), "unknown");
  EXPECT_EQ(read("navy/navy"), read("navy"));
}

TEST(ReadColour, PrintsHaveNoSingleColour) {
  EXPECT_EQ(read("Multi"), "print 0");
  EXPECT_EQ(read("Leopard"), "print 0");
  EXPECT_EQ(read("Navy/White stripe"), "print 2");
  EXPECT_EQ(read("blue floral"), "print 1");
  EXPECT_EQ(read("Blue (floral)"), "print 1");
  EXPECT_EQ(read("bunt"), "print 0");
  EXPECT_EQ(read("blanc \xC3\xA0 pois"), "print 1");
}

TEST(ReadColour, AWordThatIsBothIsAColourOnlyAlone) {
  EXPECT_EQ(read("heather"), "#97869f");
  EXPECT_EQ(read("navy heather"), read("navy marl"));
  EXPECT_EQ(read("heather navy"), read("navy marl"));
}

TEST(ReadColour, OverridesWin) {
  const ColourOverrides own{{"harbour", {1, 2, 3}}, {"navy", {4, 5, 6}}};
  EXPECT_EQ(colour_value("Harbour", own), (Srgb{1, 2, 3}));
  EXPECT_EQ(colour_value("NAVY", own), (Srgb{4, 5, 6}));
  EXPECT_EQ(colour_value("ecru", own), colour_value("ecru"));
}

}  // namespace
}  // namespace rangebook
