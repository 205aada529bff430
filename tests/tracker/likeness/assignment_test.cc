// The assignment against every possible choice on tiny groups.
#include "tracker/likeness/assignment.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>
#include <set>

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

double sum_of(const std::vector<WeightedPair>& pairs, const std::vector<std::size_t>& chosen) {
  double sum = 0;
  for (const std::size_t pair : chosen) sum += pairs[pair].weight;
  return sum;
}

bool is_one_to_one(const std::vector<WeightedPair>& pairs, const std::vector<std::size_t>& chosen) {
  std::set<std::uint32_t> rows;
  std::set<std::uint32_t> columns;
  for (const std::size_t pair : chosen) {
    if (!rows.insert(pairs[pair].row).second) return false;
    if (!columns.insert(pairs[pair].column).second) return false;
  }
  return true;
}

/// The best sum over all subsets of the pairs.
double best_sum(const std::vector<WeightedPair>& pairs) {
  double best = 0;
  for (std::uint32_t subset = 0; subset < (1U << pairs.size()); ++subset) {
    std::vector<std::size_t> chosen;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
      if ((subset >> i & 1U) != 0) chosen.push_back(i);
    }
    if (is_one_to_one(pairs, chosen)) best = std::max(best, sum_of(pairs, chosen));
  }
  return best;
}

std::vector<WeightedPair> random_pairs(std::mt19937_64& random) {
  std::set<std::pair<std::uint32_t, std::uint32_t>> places;
  for (std::uint64_t i = 0; i < 3 + random() % 9; ++i) places.emplace(random() % 4, random() % 5);
  std::vector<WeightedPair> pairs;
  for (const auto& [row, column] : places) {
    pairs.push_back({row, column, 0.25 * static_cast<double>(1 + random() % 20)});
  }
  return pairs;
}

TEST(Assignment, IsTheBestOfAllChoices) {
  std::mt19937_64 random(4);
  for (int round = 0; round < 300; ++round) {
    const auto pairs = random_pairs(random);
    const auto chosen = assign(pairs);
    ASSERT_TRUE(is_one_to_one(pairs, chosen)) << round;
    ASSERT_NEAR(sum_of(pairs, chosen), best_sum(pairs), 1e-9) << round;
  }
}

TEST(Assignment, BeyondItsBoundIsAtLeastHalfAsGood) {
  std::mt19937_64 random(5);
  for (int round = 0; round < 100; ++round) {
    const auto pairs = random_pairs(random);
    const auto chosen = assign(pairs, 0);
    ASSERT_TRUE(is_one_to_one(pairs, chosen));
    ASSERT_GE(2 * sum_of(pairs, chosen), best_sum(pairs));
  }
}

// With sums of rounded costs a path once became cheaper by going in a circle, and it never ended:
// lines that are exactly alike have equal weights towards all others.
TEST(Assignment, EndsOnOddWeightsThatTie) {
  std::mt19937_64 random(6);
  for (int round = 0; round < 300; ++round) {
    std::vector<double> of_row(20);
    std::vector<double> of_column(20);
    for (double& part : of_row) part = 5.0 / static_cast<double>(1 + random() % 7);
    for (double& part : of_column) part = 3.0 / static_cast<double>(1 + random() % 7);
    std::vector<WeightedPair> pairs;
    for (std::uint32_t row = 0; row < of_row.size(); ++row) {
      for (std::uint32_t column = 0; column < of_column.size(); ++column) {
        if (random() % 3 != 0) pairs.push_back({row, column, of_row[row] + of_column[column]});
      }
    }
    const auto chosen = assign(pairs);
    ASSERT_TRUE(is_one_to_one(pairs, chosen));
    ASSERT_GE(sum_of(pairs, chosen) + 1e-6, sum_of(pairs, assign(pairs, 0)));
  }
}

TEST(Assignment, GivesUpABetterPairForTwoGoodOnes) {
  EXPECT_THAT(assign({{0, 0, 5}, {0, 1, 4}, {1, 0, 4}}), ElementsAre(1, 2));
  EXPECT_THAT(assign({{0, 0, 9}, {0, 1, 4}, {1, 0, 4}}), ElementsAre(0));
  EXPECT_THAT(assign({}), IsEmpty());
}

}  // namespace
}  // namespace rangebook
