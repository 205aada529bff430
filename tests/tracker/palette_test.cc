// Palettes of captures, counted by hand.
#include "tracker/palette.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "tests/tracker/range_text.h"

namespace rangebook {
namespace {

Snapshot capture(std::string_view lines) { return testing::range("AW26", lines); }

constexpr const char* kRange =
    "A1 | Maya Dress | Dresses | navy, cream, Navy | 8 | 50\n"
    "A2 | Lena Dress | Dresses | Harbour, leopard | 8 | 50\n"
    "A3 | Ida Trousers | Trousers | black/white, harbour_blue, black | 8 | 50\n"
    "A4 | Una Trousers | Trousers | - | 8 | 50\n";

std::uint32_t of(const Palette& palette, Undertone undertone) {
  return palette.undertones[static_cast<std::size_t>(undertone)];
}
std::uint32_t of(const Palette& palette, ColourValue value) {
  return palette.values[static_cast<std::size_t>(value)];
}
std::uint32_t of(const Palette& palette, HueFamily family) {
  return palette.families[static_cast<std::size_t>(family)];
}

TEST(PalettesOf, CountsColourwaysOfTheWholeAndOfEachCategory) {
  const auto palettes = palettes_of(capture(kRange));
  ASSERT_EQ(palettes.size(), 3U);
  EXPECT_EQ(palettes[0].category, "all");
  EXPECT_EQ(palettes[1].category, "dresses");
  EXPECT_EQ(palettes[2].category, "trousers");
  const Palette& all = palettes[0].palette;
  EXPECT_EQ(all.lines, 4U);
  EXPECT_EQ(all.without_colour, 1U);
  EXPECT_EQ(all.colourways, 7U);  // navy, cream, Harbour, leopard, black/white, harbour blue, black
  EXPECT_EQ(all.known, 3U);
  EXPECT_EQ(all.by_family, 1U);
  EXPECT_EQ(all.several, 1U);
  EXPECT_EQ(all.prints, 1U);
  EXPECT_EQ(all.unknown, 1U);
  EXPECT_TRUE(all.adds_up());
  EXPECT_EQ(all.unknown_names, std::vector<std::string>{"Harbour"});
}

TEST(PalettesOf, TraitsOfKnownColoursOnly) {
  const Palette all = palettes_of(capture(kRange)).front().palette;
  EXPECT_EQ(of(all, Undertone::cool), 1U);     // navy
  EXPECT_EQ(of(all, Undertone::warm), 1U);     // cream
  EXPECT_EQ(of(all, Undertone::neutral), 1U);  // black
  EXPECT_EQ(of(all, ColourValue::light), 1U);
  EXPECT_EQ(of(all, ColourValue::deep), 2U);
  EXPECT_EQ(of(all, HueFamily::blue), 2U);  // navy, and harbour blue by its family
}

TEST(PalettesOf, OverridesAndScope) {
  const auto dresses = palettes_of(capture(kRange), {Scope::Kind::categories, {"dresses"}},
                                   {{"harbour", {31, 42, 68}}});
  ASSERT_EQ(dresses.size(), 2U);
  EXPECT_EQ(dresses[0].palette, dresses[1].palette);
  EXPECT_EQ(dresses[0].palette.unknown, 0U);
  EXPECT_EQ(of(dresses[0].palette, Undertone::cool), 2U);
}

TEST(PalettesOf, AnEmptyCaptureHasAnEmptyPalette) {
  const auto palettes = palettes_of(capture(""));
  ASSERT_EQ(palettes.size(), 1U);
  EXPECT_EQ(palettes[0].palette, Palette{});
}

TEST(ComparePalettes, ACategoryOfOneSideStandsBesideNothing) {
  const auto pairs = compare_palettes(capture("A1 | Maya Dress | Dresses | navy | 8 | 50\n"),
                                      capture("B1 | Ida Skirt | Skirts | cream | 8 | 50\n"), {});
  ASSERT_EQ(pairs.size(), 3U);
  EXPECT_EQ(pairs[0].category, "all");
  EXPECT_EQ(pairs[1].category, "dresses");
  EXPECT_EQ(pairs[1].after, Palette{});
  EXPECT_EQ(pairs[2].category, "skirts");
  EXPECT_EQ(pairs[2].before, Palette{});
}

Palette warm_and_cool(std::uint32_t warm, std::uint32_t cool) {
  Palette palette;
  palette.undertones = {warm, cool, 50};
  return palette;
}

TEST(LeanOf, ThreeInFiveOfTenOrMore) {
  EXPECT_EQ(lean_of(warm_and_cool(6, 4)), PaletteLean::warm);
  EXPECT_EQ(lean_of(warm_and_cool(4, 6)), PaletteLean::cool);
  EXPECT_EQ(lean_of(warm_and_cool(59, 41)), PaletteLean::balanced);
  EXPECT_EQ(lean_of(warm_and_cool(5, 4)), PaletteLean::unclear);
  EXPECT_EQ(to_string(PaletteLean::unclear), "unclear");
}

}  // namespace
}  // namespace rangebook
