// The Wilson score interval against published examples, its defining equation and its laws.
#include "tracker/wilson.h"

#include <gtest/gtest.h>

#include <charconv>
#include <cmath>

#include "tests/check_rows.h"

namespace rangebook {
namespace {

std::uint32_t whole_number(const std::string& cell) {
  std::uint32_t value = 0;
  std::from_chars(cell.data(), cell.data() + cell.size(), value);
  return value;
}

/// `0.2553` as 2553.
std::uint32_t four_places(std::uint32_t millionths) { return (millionths + 50) / 100; }

// Source: tests/checks/wilson_intervals.tsv.
TEST(Wilson, AsNewcombePublished) {
  for (const auto& row : check_rows("wilson_intervals.tsv")) {
    const auto interval = wilson_interval(whole_number(row.at(0)), whole_number(row.at(1)));
    EXPECT_EQ(four_places(interval.low), whole_number(row.at(2).substr(2))) << row[0];
    EXPECT_EQ(four_places(interval.high), whole_number(row.at(3).substr(2))) << row[0];
  }
}

// The interval holds the shares that a score test does not reject: at its ends the distance to the
// share seen is 1.96 standard errors of that end.
TEST(Wilson, EndsAreWhereTheScoreTestTurns) {
  for (const std::uint32_t whole : {3U, 24U, 300U}) {
    for (std::uint32_t part = 1; part < whole; ++part) {
      const double seen = static_cast<double>(part) / whole;
      const auto interval = wilson_interval(part, whole);
      for (const std::uint32_t end : {interval.low, interval.high}) {
        const double share = end / 1e6;
        const double error = std::sqrt(share * (1 - share) / whole);
        EXPECT_NEAR(std::abs(seen - share), 1.959964 * error, 5e-6) << part << " of " << whole;
      }
    }
  }
}

TEST(Wilson, HoldsTheShareAndMirrors) {
  for (std::uint32_t whole = 1; whole <= 60; ++whole) {
    for (std::uint32_t part = 0; part <= whole; ++part) {
      const auto interval = wilson_interval(part, whole);
      const double seen = 1e6 * part / whole;
      EXPECT_LE(interval.low, seen + 1);
      EXPECT_GE(interval.high, seen - 1);
      const auto rest = wilson_interval(whole - part, whole);
      EXPECT_NEAR(1e6 - rest.high, interval.low, 1);
      EXPECT_NEAR(1e6 - rest.low, interval.high, 1);
    }
  }
}

TEST(Wilson, MoreLinesSayMore) {
  const auto width = [](std::uint32_t part, std::uint32_t whole) {
    const auto interval = wilson_interval(part, whole);
    return interval.high - interval.low;
  };
  for (std::uint32_t times = 1; times < 50; ++times) {
    EXPECT_GT(width(3 * times, 8 * times), width(3 * times + 3, 8 * times + 8));
  }
}

TEST(Wilson, OfNothingNothingIsKnown) {
  EXPECT_EQ(wilson_interval(0, 0), (ShareInterval{0, 1'000'000}));
  EXPECT_EQ(wilson_interval(0, 5).low, 0U);
  EXPECT_EQ(wilson_interval(5, 5).high, 1'000'000U);
}

}  // namespace
}  // namespace rangebook
