// Which amounts of a page may be its price.
#include "importers/page_amounts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <variant>

#include "importers/html_tree.h"

namespace rangebook {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

// The amounts that may be a price, as written.
std::vector<std::string> prices_of(const std::string& html) {
  const auto built = HtmlTree::build("<h1>Coat</h1>" + html);
  std::vector<std::string> out;
  for (const auto& amount : shown_amounts(PageView(std::get<HtmlTree>(built)))) {
    if (amount.role != AmountRole::other) out.push_back(amount.text);
  }
  return out;
}

TEST(PageAmounts, OtherThingsCostMoneyToo) {
  for (const char* other :
       {"<p>2 for £30</p>", "<p>3 pour 50 €</p>", "<p>Versandkosten 4,90 €</p>",
        "<p>Bezorgkosten € 2,95</p>", "<p>or 12 payments x £10.00</p>", "<p>£20.42 a month</p>",
        "<p>Members pay £40.50</p>", "<p>Prix membre 39,95 €</p>", "<p>Student? Student £9</p>",
        "<label><input type=checkbox>£0 - £50</label>", "<p>Add repair cover for £6.99</p>",
        "<p>30% off with code, now £82.60</p>", "<p>dont 0,02 € d'éco-participation</p>",
        "<p>Our customers spend about £120 on a good jumper and keep it for years</p>"}) {
    EXPECT_THAT(prices_of(other), IsEmpty()) << other;
  }
}

TEST(PageAmounts, APriceStaysOne) {
  EXPECT_THAT(prices_of("<p>Now £45.00</p>"), ElementsAre("£45.00"));
  EXPECT_THAT(prices_of("<p>Van € 79,95 voor € 59,95</p>"), ElementsAre("€ 79,95", "€ 59,95"));
  EXPECT_THAT(prices_of("<p>40% off £39.60</p>"), ElementsAre("£39.60"));
  EXPECT_THAT(prices_of("<p>69€99</p>"), ElementsAre("69€99"));
  EXPECT_THAT(prices_of("<p>£39.00 including VAT (£32.50 excluding VAT)</p>"),
              ElementsAre("£39.00"));
  EXPECT_THAT(prices_of("<p>£79.00 including VAT with free delivery and thirty days to return</p>"),
              ElementsAre("£79.00"));
}

TEST(PageAmounts, ANumberAloneCountsWhereItIsCalledPrice) {
  EXPECT_THAT(prices_of("<b class=price>42,<small>50</small></b>"), ElementsAre("42,50"));
  EXPECT_THAT(prices_of("<b class=price><i>135,00</i><i>€</i></b>"), ElementsAre("135,00€"));
  EXPECT_THAT(prices_of("<b class=rating>4,50</b>"), IsEmpty());
  EXPECT_THAT(prices_of("<b class=price>2024</b>"), IsEmpty());
}

}  // namespace
}  // namespace rangebook
