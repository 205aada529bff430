// Prices outside product markup: which are believed, and how they are labelled.
#include "importers/loose_offer.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

std::string price_of(const ReadPage& page) {
  if (page.rows.empty()) return {};
  const auto found = page.rows[0].find("price");
  return found == page.rows[0].end() ? "" : found->second;
}

TEST(LooseOffer, APropertyOutsideAnyItemCounts) {
  const ReadPage page = read_page(
      "<h1>Coat</h1><meta itemprop=price content=49.90><meta itemprop=priceCurrency content=EUR>"
      "<link itemprop=availability href='https://schema.org/OutOfStock'>");
  ASSERT_THAT(page.rows, SizeIs(1));
  EXPECT_EQ(
      page.rows[0],
      (Cells{
          {"name", "Coat"}, {"price", "49.90"}, {"currency", "EUR"}, {"in_stock", "OutOfStock"}}));
  EXPECT_THAT(page.mapping, HasSubstr("loose=1"));
}

TEST(LooseOffer, SeveralLoosePropertiesSayNothing) {
  const ReadPage page =
      read_page("<h1>Coats</h1><i itemprop=price>49.90</i><i itemprop=price>59.90</i>");
  EXPECT_EQ(price_of(page), "");
}

std::string with_script(const std::string& script) {
  return "<!doctype html><h1>Wool coat</h1><button>Add to bag</button><script>" + script +
         "</script>";
}

TEST(LooseOffer, DataOfAScriptCountsWhereItNamesTheProduct) {
  for (const char* script :
       {"window.__STATE__ = {\"p\":{\"title\":\"Wool "
        "coat\",\"price\":\"95.00\",\"currency\":\"GBP\"},"
        "\"more\":[{\"title\":\"Wool scarf\",\"price\":\"20.00\"}]};",
        "var a=1;var d={\"name\":\"Wool coat\",\"price\":{\"amount\":95.0,\"currency\":\"GBP\"}}",
        "{\"name\":\"Wool coat\",\"price\":{\"value\":9500,\"formatted\":\"\\u00a395.00\"}}"}) {
    const ReadPage page = read_page(with_script(script));
    EXPECT_THAT(price_of(page), HasSubstr("95.0")) << script;
    ASSERT_THAT(page.rejections, testing::Not(IsEmpty()));
    EXPECT_THAT(page.rejections[0].what, HasSubstr("data of a script"));
  }
}

TEST(LooseOffer, DataThatMayMeanSomethingElseSaysNothing) {
  for (const char* script :
       {"x={\"name\":\"Wool coat\",\"price\":9500}",  // pounds or pence
        "x={\"name\":\"Wool coat\",\"price\":\"95.00\",\"salePrice\":\"80.00\"}",
        "x={\"name\":\"Wool scarf\",\"price\":\"95.00\"}",
        "x={\"shipping\":{\"price\":\"3.99\"},\"name\":\"Wool coat\"}",
        "x=[{\"name\":\"Wool coat\",\"price\":\"95.00\"},{\"name\":\"Wool "
        "coat\",\"price\":\"99.00\"}]",
        "x={\"name\":\"Wool coat\",\"price\":\"95.00\""}) {
    EXPECT_EQ(price_of(read_page(with_script(script))), "") << script;
  }
}

TEST(LooseOffer, WhatThePageShowsComesFirst) {
  const ReadPage page = read_page("<p class=price>£80.00</p>" +
                                  with_script("x={\"name\":\"Wool coat\",\"price\":\"95.00\"}"));
  EXPECT_EQ(price_of(page), "£80.00");
  for (const auto& said : page.rejections) {
    EXPECT_NE(said.kind, RejectionKind::conflicting_rows) << said.what;
  }
}

}  // namespace
}  // namespace rangebook
