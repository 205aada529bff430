// Amounts in running text: what is one, and which signs belong to it.
#include "importers/page_money.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "importers/page_merge.h"
#include "importers/visible_sizes.h"

namespace rangebook {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::vector<std::string> texts(std::string_view line) {
  std::vector<std::string> out;
  for (const auto& money : find_money(line)) {
    out.emplace_back(line.substr(money.begin, money.end - money.begin));
  }
  return out;
}

// Forms of common practice in shops, no source.
TEST(PageMoney, IsANumberBesideASign) {
  EXPECT_THAT(texts("Now \u00a379.99!"), ElementsAre("\u00a379.99"));
  EXPECT_THAT(texts("1.299,00 \u20ac inkl. MwSt."), ElementsAre("1.299,00 \u20ac"));
  EXPECT_THAT(texts("1 299 kr"), ElementsAre("1 299 kr"));
  EXPECT_THAT(texts("CHF 49.\u2013"), ElementsAre("CHF 49.\u2013"));
  EXPECT_THAT(texts("\u20ac 45,- p.p."), ElementsAre("\u20ac 45,-"));
}

TEST(PageMoney, EachSignBelongsToOneNumber) {
  EXPECT_THAT(texts("10 \u20ac 20 \u20ac"), ElementsAre("10 \u20ac", "20 \u20ac"));
  EXPECT_THAT(texts("$10 $20"), ElementsAre("$10", "$20"));
  EXPECT_THAT(texts("\u00a310\u00a320"), ElementsAre("\u00a310", "\u00a320"));
}

TEST(PageMoney, OtherNumbersAreNone) {
  for (const char* line : {"65% cotton", "Size 12", "2 for 1", "12 km", "10 ft", "Tel. 030 1234567",
                           "All 12 sizes", "EUROPE 38", "A4", "$"}) {
    EXPECT_THAT(texts(line), IsEmpty()) << line;
  }
}

TEST(PageMoney, AmountsCompareWhateverTheirSigns) {
  EXPECT_EQ(comparable_amount("\u20ac 1.299,00"), comparable_amount("1299"));
  EXPECT_EQ(comparable_amount("1,299"), comparable_amount("1299.00"));
  EXPECT_EQ(comparable_amount("30.0"), comparable_amount("30,00 \u20ac"));
  EXPECT_NE(comparable_amount("49.90"), comparable_amount("49.09"));
  EXPECT_EQ(comparable_amount("free"), std::nullopt);
}

TEST(VisibleSizes, LookLikeSizes) {
  for (const char* label : {"S", "xxl", "3XL", "12", "EU 38", "UK 8", "W32 L34", "8-10", "S/M",
                            "One size", "75B", "38.5", "32/34", "2 years"}) {
    EXPECT_TRUE(looks_like_size(label)) << label;
  }
  for (const char* label : {"", "Navy", "Add", "Select", "Size guide", "1234", "UK", "12 items"}) {
    EXPECT_FALSE(looks_like_size(label)) << label;
  }
}

}  // namespace
}  // namespace rangebook
