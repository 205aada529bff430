// Quartiles against published examples, and ladders of small ranges.
#include "tracker/price_ladder.h"

#include <gtest/gtest.h>

#include <numeric>

#include "tests/tracker/range_text.h"

namespace rangebook {
namespace {

std::vector<MinorUnits> quartiles(const std::vector<MinorUnits>& ascending) {
  std::vector<MinorUnits> result;
  for (unsigned quarter = 0; quarter <= 4; ++quarter)
    result.push_back(quartile(ascending, quarter));
  return result;
}

// Source: test_statistics.py of CPython 3.11 (PSF licence), inclusive method, "cross-checked
// against PERCENTILE.INC and SciPy": quartiles of 100, 200, 400, 800 are 175, 300, 500.
TEST(Quartile, InclusiveMethodOfPython) {
  EXPECT_EQ(quartiles({100, 200, 400, 800}), (std::vector<MinorUnits>{100, 175, 300, 500, 800}));
}

// Source: reference of the S/R function quantile (TIBCO Enterprise Runtime for R 6.1, default
// type 7): 1..9 has 1, 3, 5, 7, 9; and its formula for 1..10 gives 1, 3.25, 5.5, 7.75, 10.
TEST(Quartile, TypeSevenOfHyndmanAndFan) {
  std::vector<MinorUnits> nine(9);
  std::iota(nine.begin(), nine.end(), 1);
  EXPECT_EQ(quartiles(nine), (std::vector<MinorUnits>{1, 3, 5, 7, 9}));
  std::vector<MinorUnits> ten;
  for (MinorUnits i = 1; i <= 10; ++i) ten.push_back(i * 100);
  EXPECT_EQ(quartiles(ten), (std::vector<MinorUnits>{100, 325, 550, 775, 1000}));
}

TEST(Quartile, RoundsHalfUp) {
  EXPECT_EQ(quartiles({1, 2}), (std::vector<MinorUnits>{1, 1, 2, 2, 2}));  // 1.25, 1.5, 1.75
  EXPECT_EQ(quartiles({1}), (std::vector<MinorUnits>{1, 1, 1, 1, 1}));
  EXPECT_EQ(quartile(std::vector<MinorUnits>{1, 2, 2, 3, 4, 4, 7}, 1), 2);
}

TEST(PriceLadder, TakesEachLinesLowestSellingPrice) {
  const Snapshot snapshot = testing::range("AW26", R"(
    AB1 | Maya Dress | Dresses | navy | 8, 10 | 50
      : navy 10 40/50
    AB2 | Ines Dress | Dresses | navy | 8     | 80
    AB3 | Ada Dress  | Dresses | navy | 8     | -
  )");
  LadderTally tally;
  for (const LineState& line : snapshot.lines) tally.add(line.listing.offers);
  const auto ladders = tally.ladders();
  ASSERT_EQ(ladders.size(), 1U);
  EXPECT_EQ(ladders[0],
            (PriceLadder{*Currency::from_code("EUR"), 2, 4000, 5000, 6000, 7000, 8000, 1, 200}));
}

TEST(MarkdownDepth, IsThatOfTheDeepestVariant) {
  const auto depth = [](const char* line) {
    return markdown_depth(testing::range("AW26", line).lines[0].listing.offers);
  };
  EXPECT_EQ(depth("AB1 | Maya | Dresses | navy | 8, 10 | 50"), std::nullopt);
  EXPECT_EQ(depth("AB1 | Maya | Dresses | navy | 8, 10 | 40/60\n: navy 10 30/40"), 333U);
  EXPECT_EQ(depth("AB1 | Maya | Dresses | navy | 8 | 1/3"), 667U);
  EXPECT_EQ(depth("AB1 | Maya | Dresses | navy | 8 | 0/3"), 1000U);
}

}  // namespace
}  // namespace rangebook
