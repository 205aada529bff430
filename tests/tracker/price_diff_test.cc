// Changes of prices, like for like.
#include "tracker/price_diff.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/change_text.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::line_changes;

/// One line with two colours and three sizes.
std::string line(std::string_view price, std::string_view variants = "") {
  return fmt::format("AB1 | Maya | Dresses | ecru, navy | 8, 10, 12 | {}\n{}", price, variants);
}

TEST(PriceDiff, OneChangeForTheWholeLine) {
  EXPECT_THAT(line_changes(line("50"), line("55")), ElementsAre("price-up AB1 50 -> 55"));
  EXPECT_THAT(line_changes(line("50"), line("45")), ElementsAre("price-down AB1 50 -> 45"));
}

TEST(PriceDiff, NamesColoursOrSizes) {
  EXPECT_THAT(line_changes(line("50"), line("50", ": navy 8 55\n: navy 10 55\n: navy 12 55")),
              ElementsAre("price-up AB1 50 (navy; ) -> 55 (navy; )"));
  EXPECT_THAT(line_changes(line("50"), line("50", ": navy 12 55\n: ecru 12 55")),
              ElementsAre("price-up AB1 50 (; 12) -> 55 (; 12)"));
  EXPECT_THAT(line_changes(line("50"), line("50", ": navy 10 55\n: navy 12 55")),
              ElementsAre("price-up AB1 50 (navy; 10, 12) -> 55 (navy; 10, 12)"));
}

TEST(PriceDiff, NeverNamesAVariantThatDidNotChange) {
  EXPECT_THAT(line_changes(line("50"), line("50", ": navy 8 55\n: navy 10 55\n: ecru 8 55")),
              ElementsAre("price-up AB1 50 (ecru; 8) -> 55 (ecru; 8)",
                          "price-up AB1 50 (navy; 8, 10) -> 55 (navy; 8, 10)"));
}

TEST(PriceDiff, OneChangeForEachPairOfPrices) {
  EXPECT_THAT(line_changes(line("50", ": navy 12 60\n: ecru 12 60"),
                           line("55", ": navy 12 66\n: ecru 12 66")),
              ElementsAre("price-up AB1 50 (; 8, 10) -> 55 (; 8, 10)",
                          "price-up AB1 60 (; 12) -> 66 (; 12)"));
}

TEST(PriceDiff, AMarkdownIsNotALowerFullPrice) {
  EXPECT_THAT(line_changes(line("50"), line("40/50")), ElementsAre("marked-down AB1 50 -> 40/50"));
  EXPECT_THAT(line_changes(line("40/50"), line("50")),
              ElementsAre("markdown-ended AB1 40/50 -> 50"));
  EXPECT_THAT(line_changes(line("40/50"), line("30/50")),
              ElementsAre("markdown-changed AB1 40/50 -> 30/50"));
}

TEST(PriceDiff, AHigherFullPriceBesideTheSameSellingPrice) {
  EXPECT_THAT(line_changes(line("40/50"), line("40/60")), ElementsAre("price-up AB1 50 -> 60"));
}

TEST(PriceDiff, DearerAndMarkedDownAtOnce) {
  EXPECT_THAT(line_changes(line("50"), line("48/60")),
              ElementsAre("price-up AB1 50 -> 60", "marked-down AB1 50 -> 48/60"));
}

TEST(PriceDiff, TheMarkedDownPriceBecameTheFullPrice) {
  const std::string other = "\nAB2 | Ines | Dresses | navy | 8 | 30/60";
  EXPECT_THAT(line_changes(line("40/50") + other, line("40") + other),
              ElementsAre("price-down AB1 50 -> 40", "markdown-ended AB1 40/50 -> 40"));
}

TEST(PriceDiff, ACaptureThatNeverStatesFullPricesEndsNoMarkdown) {
  EXPECT_THAT(line_changes(line("40/50"), line("40")), IsEmpty());
  EXPECT_THAT(line_changes(line("40"), line("40/50")), IsEmpty());
  EXPECT_THAT(line_changes(line("40/50"), line("50")),
              ElementsAre("markdown-ended AB1 40/50 -> 50"));
}

TEST(PriceDiff, AFullPriceAtOrBelowThePriceIsNoMarkdown) {
  EXPECT_THAT(line_changes(line("50"), line("50/50")), IsEmpty());
}

TEST(PriceDiff, PricesNotStatedSayNothing) {
  EXPECT_THAT(line_changes(line("50"), line("-")), IsEmpty());
  EXPECT_THAT(line_changes(line("-"), line("50", ": navy 8 -")), IsEmpty());
  EXPECT_THAT(line_changes(line("50", ": navy 8 -"), line("55", ": ecru 8 -")),
              ElementsAre("price-up AB1 50 -> 55"));
}

TEST(PriceDiff, ComparesOnlyVariantsBothCapturesHave) {
  EXPECT_THAT(
      line_changes("AB1 | Maya | Dresses | navy | 8, 10 | 50",
                   "AB1 | Maya | Dresses | navy | 8, 10, 12 | 50\n: navy 12 60"),
      ElementsAre("sizes-widened AB1 uk regular 8..10 [8 10] -> uk regular 8..12 [8 10 12]"));
}

TEST(PriceDiff, VariantsMatchAcrossSpellings) {
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses | Dark-Grey, navy | 8, 10 | 50",
                           "AB1 | Maya | Dresses | dark_gray, navy | UK_8, UK_10 | 50\n"
                           ": dark_gray UK_8 55\n: dark_gray UK_10 55"),
              ElementsAre("price-up AB1 50 (Dark-Grey; ) -> 55 (dark gray; )"));
}

TEST(PriceDiff, WithoutACommonVariantAUniformLineIsComparedAsAWhole) {
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses | - | - | 50",
                           "AB1 | Maya | Dresses | navy | 8, 10 | 48/60"),
              ElementsAre("price-up AB1 50 -> 60", "marked-down AB1 50 -> 48/60"));
}

TEST(PriceDiff, WithoutACommonVariantTheLowestFullPricesAreCompared) {
  EXPECT_THAT(line_changes("AB1 | Maya | Dresses | moss | 8 | 50",
                           "AB1 | Maya | Dresses | navy | 8, 10 | 48/60\n: navy 10 70"),
              ElementsAre("colour-added AB1 nothing -> navy", "colour-dropped AB1 moss -> nothing",
                          "sizes-widened AB1 uk regular 8..8 [8] -> uk regular 8..10 [8 10]",
                          "price-up AB1 50 -> 60"));
}

TEST(PriceDiff, APriceForTheWholeLineIsNotComparedWithSeveral) {
  const char* const listed = "AB1 | Maya | Dresses | - | - | 48/60";
  const char* const page = "AB1 | Maya | Dresses | navy | 8, 10 | 50\n: navy 10 48/60";
  EXPECT_THAT(line_changes(page, listed), IsEmpty());
  EXPECT_THAT(line_changes(listed, page), IsEmpty());
}

TEST(PriceDiff, CurrenciesAreNotCompared) {
  const Snapshot from = testing::range("AW25", line("50"));
  Snapshot to = testing::range("AW26", line("60"));
  to.lines[0].listing.offers.currency = Currency::from_code("GBP");
  const ChangeSet set = testing::compare(from, to);
  EXPECT_THAT(set.changes, IsEmpty());
  EXPECT_THAT(set.coverage.notes, ElementsAre(HasSubstr("different currencies")));
}

}  // namespace
}  // namespace rangebook
