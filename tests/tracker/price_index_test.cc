// Elementary indices against published figures.
#include "tracker/price_index.h"

#include <gtest/gtest.h>

#include <charconv>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace rangebook {
namespace {

/// Rows of tests/checks/elementary_indices.tsv, which names its source.
std::vector<std::vector<double>> published() {
  std::ifstream file(RANGEBOOK_CHECKS "/elementary_indices.tsv");
  std::vector<std::vector<double>> rows;
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with('#') || line.starts_with("period")) continue;
    std::istringstream cells(line);
    std::vector<double> row;
    for (std::string cell; std::getline(cells, cell, '\t');) {
      double value = 0;
      std::from_chars(cell.data(), cell.data() + cell.size(), value);
      row.push_back(value);
    }
    rows.push_back(row);
  }
  return rows;
}

std::vector<PricePair> pairs(const std::vector<double>& before, const std::vector<double>& after) {
  std::vector<PricePair> result;
  for (std::size_t product = 1; product <= 4; ++product) {
    result.push_back(
        {static_cast<MinorUnits>(before[product]), static_cast<MinorUnits>(after[product])});
  }
  return result;
}

using Index = double (*)(std::span<const PricePair>);

/// Columns `first` (direct), `first + 1` (fixed base) and `first + 2` (chained).
void check(Index index, std::size_t first) {
  const auto rows = published();
  ASSERT_EQ(rows.size(), 12U);
  double chained = 1;
  for (std::size_t period = 0; period < rows.size(); ++period) {
    const auto& before = rows[period == 0 ? 0 : period - 1];
    const double direct = index(pairs(before, rows[period]));
    chained *= direct;
    EXPECT_NEAR(direct, rows[period].at(first), 1e-11) << "period " << period + 1;
    EXPECT_NEAR(index(pairs(rows[0], rows[period])), rows[period].at(first + 1), 1e-11);
    EXPECT_NEAR(chained, rows[period].at(first + 2), 1e-11) << "period " << period + 1;
  }
}

TEST(PriceIndex, JevonsAsPublished) { check(jevons_index, 5); }
TEST(PriceIndex, DutotAsPublished) { check(dutot_index, 8); }
TEST(PriceIndex, CarliAsPublished) { check(carli_index, 11); }

TEST(PriceIndex, GivesMillionthsInAnyOrder) {
  // By hand: sqrt(1.75 * 0.5) = 0.935414; (350 + 50) / (200 + 100) = 1.333333; (1.75 + 0.5) / 2
  // = 1.125
  const auto one = elementary_indices({{200, 350}, {100, 50}});
  const auto other = elementary_indices({{100, 50}, {200, 350}});
  ASSERT_TRUE(one.has_value());
  EXPECT_EQ(*one, (IndexFact{935'414, 1'333'333, 1'125'000, 2}));
  EXPECT_EQ(one, other);
}

TEST(PriceIndex, LeavesOutPricesWithoutARelative) {
  EXPECT_EQ(elementary_indices({{0, 50}, {100, 0}}), std::nullopt);
  EXPECT_EQ(elementary_indices({{0, 50}, {100, 110}})->lines, 1U);
  EXPECT_EQ(elementary_indices({}), std::nullopt);
}

TEST(PriceIndex, JevonsReversesInTimeAndCarliDoesNot) {
  const std::vector<PricePair> there{{200, 350}, {100, 50}};
  const std::vector<PricePair> back{{350, 200}, {50, 100}};
  EXPECT_NEAR(jevons_index(there) * jevons_index(back), 1, 1e-12);
  EXPECT_GT(carli_index(there) * carli_index(back), 1.4);
}

}  // namespace
}  // namespace rangebook
