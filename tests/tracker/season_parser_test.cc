// Season codes. Common practice, no source.
#include "tracker/season_parser.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace rangebook {
namespace {

TEST(ParseSeason, AutumnWinter) {
  for (const auto* text : {"AW26", "aw 2026", "FW26", "A/W 26", "Autumn/Winter 2026", "AW26/27",
                           "Fall 2026", "Autumn Winter 26", "Herbst/Winter 2026", "Winter 26",
                           "AW '26", "2026 AW", "AW-26", "Automne-Hiver 2026", "AW 2026/2027"}) {
    const auto season = parse_season(text);
    EXPECT_EQ(season.label, "AW26") << text;
    EXPECT_EQ(season.year, 2026) << text;
    EXPECT_EQ(season.half, Season::Half::autumn_winter) << text;
  }
}

TEST(ParseSeason, SpringSummer) {
  for (const auto* text :
       {"SS26", "ss26", "Spring Summer 26", "Spring/Summer 2026", "S/S 2026", "Summer 2026",
        "Fr\xC3\xBChjahr/Sommer 26", "Printemps-\xC3\x89t\xC3\xA9 2026", "Primavera Verano 2026"}) {
    const auto season = parse_season(text);
    EXPECT_EQ(season.label, "SS26") << text;
    EXPECT_EQ(season.half, Season::Half::spring_summer) << text;
  }
  EXPECT_EQ(parse_season("SS 1998").label, "SS1998");
}

TEST(ParseSeason, OtherLabelsStayAsTheyAre) {
  for (const auto* text : {"Cruise 26", "AW", "26", "Resort", "SS26 AW26", "AW26/29", "AW3026", "",
                           "Pre-fall 2026", "S 26", "Week 35 2026", "SS26/27"}) {
    const auto season = parse_season(text);
    EXPECT_EQ(season.label, text);
    EXPECT_FALSE(season.year.has_value()) << text;
    EXPECT_FALSE(season.half.has_value()) << text;
  }
  EXPECT_EQ(parse_season("  Cruise 26 ").label, "Cruise 26");
}

// What is written can be read back: a canonical label gives itself.
TEST(ParseSeason, CanonicalCodesAreFixedPoints) {
  for (int year = 0; year < 100; ++year) {
    for (const std::string half : {"SS", "AW"}) {
      const auto code = half + (year < 10 ? "0" : "") + std::to_string(year);
      EXPECT_EQ(parse_season(code).label, code);
    }
  }
}

TEST(SeasonLess, TradeOrder) {
  const std::vector<std::string> order{"AW24", "SS25", "AW25", "SS26", "AW26", "Cruise", "Resort"};
  for (std::size_t i = 0; i < order.size(); ++i) {
    for (std::size_t j = 0; j < order.size(); ++j) {
      EXPECT_EQ(season_less(parse_season(order[i]), parse_season(order[j])), i < j)
          << order[i] << ' ' << order[j];
    }
  }
}

}  // namespace
}  // namespace rangebook
