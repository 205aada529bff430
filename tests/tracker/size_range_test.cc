// Lists and ranges in size cells. Common practice, no source.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "tracker/size_parser.h"

namespace rangebook {
namespace {

using System = SizeSystem;
using Labels = std::vector<std::string>;

Labels labels_of(std::string_view cell, System shop = System::uk) {
  const auto result = expand_sizes(cell, shop);
  if (const auto* bad = std::get_if<SizeProblem>(&result)) return {"problem: " + bad->what};
  return std::get<Labels>(result);
}
SizeProblem problem_of(std::string_view cell, System shop = System::uk) {
  const auto result = expand_sizes(cell, shop);
  const auto* bad = std::get_if<SizeProblem>(&result);
  return bad ? *bad : SizeProblem{"no problem: " + std::string(cell), ""};
}

const Labels kUk8To20{"8", "10", "12", "14", "16", "18", "20"};

TEST(ExpandSizes, OneLabelStaysVerbatim) {
  EXPECT_EQ(labels_of(" 12 "), Labels{"12"});
  EXPECT_EQ(labels_of(""), Labels{});
  EXPECT_EQ(labels_of("X-Large"), Labels{"X-Large"});
  EXPECT_EQ(labels_of("12-R"), Labels{"12-R"});
  EXPECT_EQ(labels_of("one-size"), Labels{"one-size"});
  EXPECT_EQ(labels_of("made to measure"), Labels{"made to measure"});
  EXPECT_EQ(labels_of("7-8 years"), Labels{"7-8 years"});
  EXPECT_EQ(labels_of("W30 L32"), Labels{"W30 L32"});
  EXPECT_EQ(labels_of("38,5", System::eu), Labels{"38,5"});
}

TEST(ExpandSizes, Lists) {
  const Labels three{"8", "10", "12"};
  for (const auto* cell : {"8|10|12", "8, 10, 12", "8;10;12", "8 10 12", "8/10/12", "8,10,12",
                           "8 | 10 | 12 |", "8\n10\n12", "8|8|10|12", "8-10-12", "8, 10 & 12"}) {
    EXPECT_EQ(labels_of(cell), three) << cell;
  }
  EXPECT_EQ(labels_of("S M L"), (Labels{"S", "M", "L"}));
  EXPECT_EQ(labels_of("S/M/L/XL"), (Labels{"S", "M", "L", "XL"}));
  EXPECT_EQ(labels_of("36|36,5|37", System::footwear_eu), (Labels{"36", "36,5", "37"}));
  EXPECT_EQ(labels_of("4,5", System::footwear_uk), (Labels{"4", "5"}));
}

TEST(ExpandSizes, RangesInUkSteps) {
  for (const auto* cell : {"8-20", "8 - 20", "8 \xE2\x80\x93 20", "8 to 20",
                           "8\xE2\x80\x94"
                           "20"}) {
    EXPECT_EQ(labels_of(cell), kUk8To20) << cell;
  }
  EXPECT_EQ(labels_of("8 to 10"), (Labels{"8", "10"}));
}

TEST(ExpandSizes, WordsAroundARangeGoToEveryLabel) {
  EXPECT_EQ(labels_of("UK 8-12"), (Labels{"UK 8", "UK 10", "UK 12"}));
  EXPECT_EQ(labels_of("UK 8 - UK 12"), (Labels{"UK 8", "UK 10", "UK 12"}));
  EXPECT_EQ(labels_of("8-12 Petite"), (Labels{"8 Petite", "10 Petite", "12 Petite"}));
  EXPECT_EQ(labels_of("8P-12P"), (Labels{"8P", "10P", "12P"}));
  EXPECT_EQ(labels_of("8-12|8-12 petite"),
            (Labels{"8", "10", "12", "8 petite", "10 petite", "12 petite"}));
  EXPECT_EQ(labels_of("XS-M Petite"), (Labels{"XS Petite", "S Petite", "M Petite"}));
}

TEST(ExpandSizes, EachSystemHasItsSteps) {
  EXPECT_EQ(labels_of("36-44", System::eu), (Labels{"36", "38", "40", "42", "44"}));
  EXPECT_EQ(labels_of("36-41", System::footwear_eu), (Labels{"36", "37", "38", "39", "40", "41"}));
  EXPECT_EQ(labels_of("36-37.5", System::footwear_eu), (Labels{"36", "36.5", "37", "37.5"}));
  EXPECT_EQ(labels_of("00-4", System::us), (Labels{"00", "0", "2", "4"}));
  EXPECT_EQ(labels_of("14W-18W", System::us), (Labels{"14W", "16W", "18W"}));
  EXPECT_EQ(labels_of("5-11", System::jp), (Labels{"5", "7", "9", "11"}));
  EXPECT_EQ(labels_of("W26-W28"), (Labels{"W26", "W27", "W28"}));
  EXPECT_EQ(labels_of("32B-36B"), (Labels{"32B", "34B", "36B"}));
  EXPECT_EQ(labels_of("EU 36-40"), (Labels{"EU 36", "EU 38", "EU 40"}));
}

TEST(ExpandSizes, RangesOfLetters) {
  EXPECT_EQ(labels_of("XS-XL"), (Labels{"XS", "S", "M", "L", "XL"}));
  EXPECT_EQ(labels_of("XS to 3XL"), (Labels{"XS", "S", "M", "L", "XL", "XXL", "3XL"}));
  EXPECT_EQ(labels_of("xs-l"), (Labels{"xs", "s", "m", "l"}));
  EXPECT_EQ(labels_of("1X-3X"), (Labels{"1X", "2X", "3X"}));
  EXPECT_EQ(labels_of("Small - X-Large"), (Labels{"Small", "Medium", "Large", "X-Large"}));
}

TEST(ExpandSizes, NeighbouringStepsAreOneDualSize) {
  EXPECT_EQ(labels_of("12-14"), Labels{"12-14"});
  EXPECT_EQ(labels_of("8-10|12-14"), (Labels{"8-10", "12-14"}));
  EXPECT_EQ(labels_of("S-M"), Labels{"S-M"});
  EXPECT_EQ(labels_of("S/M"), Labels{"S/M"});
  EXPECT_EQ(labels_of("36-37", System::footwear_eu), Labels{"36-37"});
  EXPECT_EQ(labels_of("12-14", System::unknown), Labels{"12-14"});
}

TEST(ExpandSizes, ProblemsSayWhatAndHow) {
  EXPECT_EQ(problem_of("20-8").what, "The size range \"20-8\" does not end above its start.");
  EXPECT_EQ(problem_of("20-8").how_to_fix, "List the sizes one by one, for instance 8|10|12.");
  EXPECT_EQ(problem_of("8-XL").what,
            "The size range \"8-XL\" mixes size systems, fits or measures.");
  EXPECT_EQ(problem_of("XS-XLL").what,
            "The size range \"XS-XLL\" ends with \"XLL\", which is no size.");
  EXPECT_EQ(problem_of("32A-38DD").what,
            "The size range \"32A-38DD\" mixes size systems, fits or measures.");
  EXPECT_NE(problem_of("8-20", System::unknown).how_to_fix.find("size system"), std::string::npos);
  EXPECT_EQ(problem_of("7-21").what, "The size range \"7-21\" is not on its scale (uk).");
  EXPECT_EQ(problem_of("8-20", System::unknown).what,
            "The steps of the size range \"8-20\" are not known.");
  EXPECT_NE(problem_of("UK 8 - EU 40").what.find("mixes"), std::string::npos);
  EXPECT_NE(problem_of("8P-12").what.find("mixes"), std::string::npos);
}

TEST(ExpandSizes, LimitsHaveAMessage) {
  std::string many;
  for (int i = 0; i < 150; ++i) many += "a" + std::to_string(i) + "|";
  EXPECT_NE(problem_of(many).what.find("more than 100"), std::string::npos);
  EXPECT_NE(problem_of(std::string(101, 'x')).what.find("too long"), std::string::npos);
  EXPECT_NE(problem_of(std::string(5000, '|')).what.find("too long"), std::string::npos);
}

// Whatever a range expands to is understood in one system, in rising order.
TEST(ExpandSizes, ExpandedRangesAreRankedInOrder) {
  const std::pair<const char*, System> cells[] = {
      {"6-28", System::uk},    {"32-50", System::eu}, {"00-18", System::us},
      {"XXS-6XL", System::uk}, {"3-31", System::jp},  {"35-42", System::footwear_eu},
      {"65C-95C", System::eu}};
  for (const auto& [cell, shop] : cells) {
    const auto labels = labels_of(cell, shop);
    const auto sizes = interpret_sizes(labels, shop);
    ASSERT_GT(sizes.size(), 2U) << cell;
    for (std::size_t i = 1; i < sizes.size(); ++i) {
      EXPECT_EQ(sizes[i].system, sizes[0].system) << cell;
      EXPECT_TRUE(sizes[i].ranked()) << cell;
      EXPECT_LT(sizes[i - 1].low, sizes[i].low) << cell << ": " << sizes[i].label;
    }
  }
}

}  // namespace
}  // namespace rangebook
