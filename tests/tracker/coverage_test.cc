// Scopes that two captures share, and whose lines refused rows may be.
#include "tracker/coverage.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tracker/differ.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;

Scope categories(std::vector<std::string> slugs) {
  return {Scope::Kind::categories, std::move(slugs)};
}
const Scope kAll{Scope::Kind::all, {}};
const Scope kPicks{Scope::Kind::picks, {}};

TEST(Scope, CoversCategoriesAndWhatStandsBelow) {
  EXPECT_TRUE(scope_covers(kAll, "dresses"));
  EXPECT_TRUE(scope_covers(kAll, "unsorted"));
  EXPECT_TRUE(scope_covers(categories({"dresses"}), "dresses"));
  EXPECT_FALSE(scope_covers(categories({"dresses"}), "knitwear"));
  EXPECT_FALSE(scope_covers(categories({"dresses"}), "unsorted"));
  EXPECT_FALSE(scope_covers(kPicks, "dresses"));
}

TEST(Scope, Common) {
  EXPECT_EQ(common_scope(kAll, kAll), kAll);
  EXPECT_EQ(common_scope(kAll, categories({"dresses"})), categories({"dresses"}));
  EXPECT_EQ(common_scope(categories({"dresses", "tops"}), categories({"knitwear", "tops"})),
            categories({"tops"}));
  EXPECT_EQ(common_scope(categories({"dresses"}), categories({"tops"})), categories({}));
  EXPECT_EQ(common_scope(kPicks, kAll), kPicks);
}

TEST(RefusedIndex, MatchesByCodeThenByName) {
  const std::vector<RefusedLine> rows{{" AB1 ", "Maya"}, {"", "Ines  Top"}, {"", ""}};
  const RefusedIndex refused(rows);
  EXPECT_TRUE(refused.may_be({"AB1", {}, "Other", {}, {}, {}}));
  EXPECT_TRUE(refused.may_be({"AB7", {}, "ines top", {}, {}, {}}));
  EXPECT_TRUE(refused.may_be({"", {}, "maya", {}, {}, {}}));
  EXPECT_FALSE(refused.may_be({"AB7", {}, "Maya", {}, {}, {}}));
  EXPECT_FALSE(refused.may_be({"", {}, "", {}, {}, {}}));
}

TEST(SilenceLog, NamesTheFirstLinesWhateverTheOrder) {
  SilenceLog log;
  for (const char* code : {"D", "B", "E", "A"})
    log.add(Silence::prices, {code, {}, {}, {}, {}, {}});
  EXPECT_THAT(log.sentences(),
              ElementsAre("4 lines (A, B, D, ..): only one capture states a price, so no price is "
                          "compared."));
}

}  // namespace
}  // namespace rangebook
