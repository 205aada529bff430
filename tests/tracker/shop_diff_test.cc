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
  // By hand: relatives 1.1 and 1; Jevons is the root of 1.1, Dutot 135/130, Carli 1.05. The new
  // line is in no index, and a markdown does not move it.
  EXPECT_THAT(
      shop_changes("AB1 | Maya | Dresses | navy | 8 | 50\nAB2 | Ines | Dresses | navy | 8 | 80",
                   "AB1 | Maya | Dresses | navy | 8 | 50/55\n"
                   "AB2 | Ines | Dresses | navy | 8 | 80\n"
                   "AB3 | Ada  | Dresses | navy | 8 | 99"),
      ElementsAre("price-index all 1000000/1000000/1000000 of 2 -> 1048809/1038462/1050000 of 2",
                  "price-index dresses 1000000/1000000/1000000 of 2 -> "
                  "1048809/1038462/1050000 of 2"));
}

TEST(ShopDiff, OnlyTheCommonScopeIsSummedUp) {
  const ChangeSet set = compare(range("AW25", kThen), within(range("AW26", R"(
    AB1 | Maya | Dresses | navy | 8, 10, 12 | 50 | in
    AB2 | Ines | Dresses | navy | 8, 10     | 80 | in
  )"),
                                                             {"dresses"}));
  EXPECT_THAT(texts(set, false), IsEmpty());
  ASSERT_EQ(set.categories.size(), 2U);
  EXPECT_EQ(set.categories[0].category, "all");
  EXPECT_EQ(set.categories[0].before.lines, 2U);
  EXPECT_EQ(set.categories[1].category, "dresses");
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

}  // namespace
}  // namespace rangebook
