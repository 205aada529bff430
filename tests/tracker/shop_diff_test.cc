// Figures and changes of categories and of the whole shop.
#include "tracker/shop_diff.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/tracker/change_text.h"

namespace rangebook {
namespace {

using testing::compare;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::range;
using testing::shop_changes;
using testing::texts;
using testing::within;

constexpr const char* kThen = R"(
  AB1 | Maya | Dresses  | navy | 8, 10, 12  | 50 | in
  AB2 | Ines | Dresses  | navy | 8, 10      | 80 | in
  AB3 | Ada  | Knitwear | navy | 8, 10, 18  | 60 | in
)";

TEST(ShopDiff, ReachOfACategoryAndOfTheShop) {
  EXPECT_THAT(shop_changes(kThen, R"(
                AB1 | Maya | Dresses  | navy | 8, 10, 12      | 50 | in
                AB2 | Ines | Dresses  | navy | 8, 10, 12, 14  | 80 | in
                AB3 | Ada  | Knitwear | navy | 8, 10, 18      | 60 | in
              )"),
              ElementsAre("reach-widened dresses uk regular 8..12 [8 10 12] -> "
                          "uk regular 8..14 [8 10 12 14]"));
}

TEST(ShopDiff, ALineAloneDoesNotMoveTheReach) {
  EXPECT_THAT(shop_changes(kThen, R"(
                AB1 | Maya | Dresses  | navy | 8, 10          | 50 | in
                AB2 | Ines | Dresses  | navy | 8, 10, 12      | 80 | in
                AB3 | Ada  | Knitwear | navy | 8, 10, 18      | 60 | in
              )"),
              IsEmpty());
}

TEST(ShopDiff, EntryPriceIsTheLowestSellingPrice) {
  EXPECT_THAT(
      shop_changes("AB1 | Maya | Dresses | navy | 8 | 50",
                   "AB1 | Maya | Dresses | navy | 8 | 40/50"),
      ElementsAre("entry-price-changed all 50 -> 40", "entry-price-changed dresses 50 -> 40"));
}

TEST(ShopDiff, AnEntryPriceThatNobodyCouldReadHasNotRisen) {
  const Snapshot from = range("AW25", kThen);
  Snapshot to = range("AW26", R"(
    AB2 | Ines | Dresses  | navy | 8, 10     | 80 | in
    AB3 | Ada  | Knitwear | navy | 8, 10, 18 | -  | in
  )");
  to.refused = {{"AB1", "Maya"}};
  EXPECT_THAT(texts(compare(from, to), false), IsEmpty());
  EXPECT_THAT(texts(compare(to, from), false), IsEmpty());
  to.refused.clear();
  EXPECT_THAT(
      texts(compare(from, to), false),
      ElementsAre("reach-narrowed dresses uk regular 8..12 [8 10 12] -> uk regular 8..10 [8 10]",
                  "entry-price-changed dresses 50 -> 80"));
}

TEST(ShopDiff, IndexOfFullPricesOfCarriedLines) {
  // By hand: relatives 1.1 and 1; Jevons is the root of 1.1, Dutot 145/140, Carli 1.05. The new
  // line is in no index, and a markdown does not move it.
  EXPECT_THAT(
      shop_changes("AB1 | Maya | Dresses | navy | 8 | 50\nAB2 | Ines | Dresses | navy | 8 | 80/90",
                   "AB1 | Maya | Dresses | navy | 8 | 50/55\n"
                   "AB2 | Ines | Dresses | navy | 8 | 80/90\n"
                   "AB3 | Ada  | Dresses | navy | 8 | 99"),
      ElementsAre("price-index all 1000000/1000000/1000000 of 2 -> 1048809/1035714/1050000 of 2",
                  "price-index dresses 1000000/1000000/1000000 of 2 -> "
                  "1048809/1035714/1050000 of 2"));
}

TEST(ShopDiff, OnlyTheCommonScopeIsSummedUp) {
  const ChangeSet set = compare(range("AW25", kThen), within(range("AW26", R"(
    AB1 | Maya | Dresses | navy | 8, 10, 12 | 50 | in
    AB2 | Ines | Dresses | navy | 8, 10     | 80 | in
  )"),
                                                             {"dresses"}));
  EXPECT_THAT(texts(set, false), IsEmpty());
  ASSERT_EQ(set.categories.size(), 3U);
  EXPECT_EQ(set.categories[0].category, "all");
  EXPECT_EQ(set.categories[0].before.lines, 2U);
  EXPECT_EQ(set.categories[0].before.outside, 1U);
  EXPECT_EQ(set.categories[1].category, "dresses");
  EXPECT_EQ(set.categories[2].before.lines, 0U);  // knitwear is in no figure
  EXPECT_EQ(set.categories[2].before.outside, 1U);
  EXPECT_EQ(set.coverage.common, (Scope{Scope::Kind::categories, {"dresses"}}));
}

TEST(ShopDiff, SizesOfRefusedRowsAreNotLost) {
  Snapshot to = range("AW26", "AB2 | Ines | Dresses | navy | 8, 10 | 80 | in");
  to.refused = {{"AB1", ""}};
  EXPECT_THAT(texts(compare(range("AW25",
                                  "AB1 | Maya | Dresses | navy | 8, 10, 12 | 50 | in\n"
                                  "AB2 | Ines | Dresses | navy | 8, 10     | 80 | in"),
                            to),
                    false),
              IsEmpty());
}

TEST(ShopDiff, SizesNotStatedAreNotLost) {
  EXPECT_THAT(shop_changes(kThen, R"(
                AB1 | Maya | Dresses  | navy | -          | 50 | in
                AB2 | Ines | Dresses  | navy | 8, 10      | 80 | in
                AB3 | Ada  | Knitwear | navy | 8, 10, 18  | 60 | in
              )"),
              IsEmpty());
}

TEST(ShopDiff, ANewLineThatHidesItsSizesMayHaveAnyOfThem) {
  const char* const now = R"(
    AB1 | Maya | Dresses  | navy | 8, 10     | 50 | in
    AB2 | Ines | Dresses  | navy | 8, 10     | 80 | in
    AB3 | Ada  | Knitwear | navy | 8, 10, 18 | 60 | in
  )";
  EXPECT_THAT(shop_changes(kThen, now),
              ElementsAre("reach-narrowed dresses uk regular 8..12 [8 10 12] -> "
                          "uk regular 8..10 [8 10]"));
  const std::string with_new = std::string(now) + "AB4 | Eva | Dresses | navy | - | 70 | in";
  EXPECT_THAT(shop_changes(kThen, with_new), IsEmpty());
  // A scarf without sizes hides none.
  const std::string with_scarf = std::string(now) + "AB4 | Eva | Scarves | navy | - | 70 | in";
  EXPECT_THAT(shop_changes(kThen, with_scarf).size(), 1U);
}

TEST(ShopDiff, ANewLineWithoutAPriceMayBeTheCheapest) {
  EXPECT_THAT(shop_changes("AB1 | Maya | Dresses | navy | 8 | 50\nAB2 | Ines | Dresses | navy | 8 "
                           "| 80",
                           "AB2 | Ines | Dresses | navy | 8 | 80\nAB3 | Ada | Dresses | navy | 8 "
                           "| -"),
              IsEmpty());
}

TEST(SizeReach, CountsLinesThatOfferAndHave) {
  const ChangeSet set = compare(range("AW25", kThen), range("AW26", R"(
    AB1 | Maya | Dresses  | navy, ecru | 8, UK_10 | 50 | in
      : navy UK_10 50 out
      : ecru UK_10 50 out
    AB2 | Ines | Dresses  | navy       | 8, 10    | 80 | in
    AB4 | Eva  | Dresses  | navy       | S/M      | 80 | in
  )"));
  const auto& reach = set.categories.at(1).after.reach;
  ASSERT_EQ(reach.size(), 2U);
  EXPECT_EQ(reach[0].system, SizeSystem::alpha);
  EXPECT_EQ(reach[1].lines, 2U);
  ASSERT_EQ(reach[1].steps.size(), 2U);
  EXPECT_EQ(reach[1].steps[0].in_stock, 2U);
  EXPECT_EQ(reach[1].steps[1].size.label, "10");
  EXPECT_EQ(reach[1].steps[1].offering, 2U);
  EXPECT_EQ(reach[1].steps[1].in_stock, 1U);
}

TEST(CategoryBook, CountsAddUp) {
  const ChangeSet set = compare(range("AW25", kThen), range("AW26", R"(
    AB1 | Maya | Dresses | navy | 8, 10, 12 | 50 | in
    AB7 | Lia  | Tops    | navy | 8         | 20 | in
  )"));
  ASSERT_EQ(set.categories.size(), 4U);
  EXPECT_EQ(set.categories[0].carried, 1U);
  EXPECT_EQ(set.categories[0].added, 1U);
  EXPECT_EQ(set.categories[0].dropped, 2U);
  EXPECT_EQ(set.categories[2].category, "knitwear");
  EXPECT_EQ(set.categories[2].index, std::nullopt);
}

TEST(CategoryBook, EveryLineStandsInOneColumn) {
  Snapshot from = range("AW25", kThen);
  Snapshot to = range("AW26", R"(
    AB1 | Maya | Knitwear | navy | 8, 10, 12 | -  | in
    AB7 | Lia  | Tops     | navy | 8         | 20 | in
    AB3 | Ada  | Knitwear | navy | -         | 60 | in
  )");
  to.refused = {{"AB2", ""}};
  const ChangeSet set = compare(from, to);
  for (const CategorySummary& summary : set.categories) {
    EXPECT_TRUE(summary.adds_up()) << summary.category;
  }
  ASSERT_EQ(set.categories.size(), 4U);
  const CategorySummary& dresses = set.categories[1];
  EXPECT_EQ(dresses.moved_out, 1U);
  EXPECT_EQ(dresses.not_covered, 1U);
  EXPECT_EQ(dresses.lines_then, 2U);
  const CategorySummary& knitwear = set.categories[2];
  EXPECT_EQ(knitwear.moved_in, 1U);
  EXPECT_EQ(knitwear.after.unpriced, 1U);
  EXPECT_EQ(knitwear.after.unsized, 1U);
  EXPECT_TRUE(knitwear.after.partial);
  EXPECT_FALSE(knitwear.before.partial);
}

TEST(CategoryBook, PartialCapturesHaveIntervals) {
  Snapshot to = range("AW26", kThen);
  EXPECT_EQ(
      compare(range("AW25", kThen), to).categories[1].after.reach[0].steps[0].offering_interval,
      std::nullopt);
  to.refused = {{"AB9", ""}};
  const ChangeSet set = compare(range("AW25", kThen), to);
  const SizeReach& dresses = set.categories[1].after.reach[0];
  ASSERT_EQ(dresses.lines, 2U);
  // By hand: Wilson for 1 of 2 is (0.5 + z2/4 -+ z sqrt(1/8 + z2/16)) / (1 + z2/2), z2 = 3.841459.
  EXPECT_EQ(dresses.steps[2].offering_interval, (ShareInterval{94'531, 905'469}));
}

}  // namespace
}  // namespace rangebook
