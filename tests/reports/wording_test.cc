// Words for values. Names of months and the signs of pound and euro: common knowledge; the rest is
// this project's own wording.
#include "reports/wording.h"

#include <gtest/gtest.h>

#include <limits>
#include <set>

#include "tests/reports/fixture/change_set.h"

namespace rangebook {
namespace {

TEST(MoneyWords, SignsOnlyWhereTheyAreUnmistakable) {
  EXPECT_EQ(money_words(fixture::pounds(7990)), "£79.90");
  EXPECT_EQ(money_words(fixture::pounds(-5)), "-£0.05");
  EXPECT_EQ(money_words({120000, fixture::currency("EUR")}), "€1200.00");
  EXPECT_EQ(money_words({7990, fixture::currency("USD")}), "79.90 USD");
  EXPECT_EQ(money_words({1200, fixture::currency("JPY")}), "1200 JPY");
  EXPECT_EQ(money_step_words(fixture::pounds(1000)), "+£10.00");
  EXPECT_EQ(money_step_words(fixture::pounds(-250)), "-£2.50");
}

TEST(DayWords, AreUnambiguous) {
  EXPECT_EQ(day_words(fixture::day("2026-09-02")), "2 September 2026");
  EXPECT_EQ(day_words(fixture::day("2024-02-29")), "29 February 2024");
}

TEST(PerMille, RoundsHalfAwayFromZeroInWholeNumbers) {
  EXPECT_EQ(per_mille_change(7990, 8990), 125);
  EXPECT_EQ(per_mille_change(2000, 2001), 1);
  EXPECT_EQ(per_mille_change(2000, 1999), -1);
  EXPECT_EQ(per_mille_change(3000, 3001), 0);
  EXPECT_EQ(per_mille_change(100, 0), -1000);
  EXPECT_EQ(per_mille_change(0, 100), std::nullopt);
  EXPECT_EQ(per_mille_change(1, std::numeric_limits<std::int64_t>::max()), std::nullopt);
}

TEST(PercentWords, OnePlace) {
  EXPECT_EQ(percent_words(125, true), "+12.5%");
  EXPECT_EQ(percent_words(-56, true), "-5.6%");
  EXPECT_EQ(percent_words(0, true), "0.0%");
  EXPECT_EQ(percent_words(1000, false), "100.0%");
}

TEST(IndexWords, NeverCallAChangeUnchanged) {
  EXPECT_EQ(index_words(1'031'200), "up 3.1%");
  EXPECT_EQ(index_words(980'000), "down 2.0%");
  EXPECT_EQ(index_words(1'000'001), "up less than 0.1%");
  EXPECT_EQ(index_words(999'999), "down less than 0.1%");
  EXPECT_EQ(index_words(1'000'000), "unchanged");
}

TEST(SizeWords, RangesListsAndFits) {
  EXPECT_EQ(size_range_words(fixture::uk_sizes({"6", "8", "10"})), "UK 6–10");
  EXPECT_EQ(size_range_words(fixture::uk_sizes({"8"}, FitRange::petite)), "petite UK 8");
  EXPECT_EQ(size_range_words(fixture::uk_sizes({"6 Petite", "8 Petite"}, FitRange::petite)),
            "UK 6 Petite–8 Petite");
  EXPECT_EQ(size_list_words(fixture::uk_sizes({"8", "10", "14"})), "UK 8, 10, 14");
  EXPECT_EQ(size_range_words({}), "none");
  const SizeFact odd{SizeSystem::unknown, FitRange::regular, {"Big", "Bigger"}, "Big", "Bigger"};
  EXPECT_EQ(size_range_words(odd), "Big, Bigger") << "unknown labels are never ranked";
}

TEST(CategoryWords, ReadAsWords) {
  EXPECT_EQ(category_words("jackets-coats"), "jackets & coats");
  EXPECT_EQ(category_words("t-shirts"), "T-shirts");
  EXPECT_EQ(category_words("all"), "the whole range");
  EXPECT_EQ(category_words("unsorted"), "lines without a category");
}

TEST(KindWords, EveryKindHasItsOwnHeading) {
  std::set<std::string_view> seen;
  for (std::size_t i = 0; i < kChangeKindCount; ++i) {
    const auto words = kind_words(static_cast<ChangeKind>(i));
    EXPECT_NE(words, "?") << i;
    EXPECT_TRUE(seen.insert(words).second) << words;
  }
}

TEST(Reconciliation, ShowsItsSumsAndSaysWhenTheyFail) {
  Reconciliation sums{70, 68, 58, 9, 1, 0, 9, 3};
  EXPECT_EQ(plain_text(lines_now_phrase(sums), false),
            "58 carried + 9 new + 1 back = 68 lines now");
  EXPECT_EQ(plain_text(lines_then_phrase(sums), false),
            "58 carried + 9 gone + 3 not looked at now = 70 lines then");
  sums.lines_now = 69;
  EXPECT_EQ(plain_text(lines_now_phrase(sums), false),
            "58 carried + 9 new + 1 back, which does not add up to the 69 lines now");
}

TEST(CaptureWords, DatesTellCapturesOfOneSeasonApart) {
  ChangeSet set = fixture::unchanged();
  EXPECT_EQ(capture_words(set.to, set.from), "AW26");
  set.from.season = "AW26";
  EXPECT_EQ(capture_words(set.to, set.from), "2 September 2026");
}

}  // namespace
}  // namespace rangebook
