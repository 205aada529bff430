// Data that a page keeps for its own scripts: shapes as shops use them, common practice, no source.
#include "importers/script_data.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/importers/page_rows.h"

namespace rangebook {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

ReadPage state(const std::string& json) {
  return read_page(
      "<html><head><title>Tweed skirt | Lowick</title></head><body><div></div>"
      "<script>window.state = " +
      json + ";</script></body></html>");
}

TEST(ScriptData, AProductByThePagesTitle) {
  const auto page = state(
      R"({"product":{"name":"Tweed skirt","price":{"current":60.00,"was":90.00,"currency":"GBP"},)"
      R"("colour":"Heather","composition":"100% wool","sizes":[{"label":"8","available":true},)"
      R"({"label":"10","available":false}]}})");
  const Cells shared{{"name", "Tweed skirt"}, {"price", "60.00"},    {"full_price", "90.00"},
                     {"currency", "GBP"},     {"colour", "Heather"}, {"composition", "100% wool"}};
  Cells there = shared;
  there["size"] = "8";
  there["in_stock"] = "InStock";
  Cells gone = shared;
  gone["size"] = "10";
  gone["in_stock"] = "OutOfStock";
  EXPECT_THAT(page.rows, ElementsAre(there, gone));
}

TEST(ScriptData, WholeNumbersMayBeCents) {
  EXPECT_THAT(state(R"({"name":"Tweed skirt","price":6000,"currency":"GBP"})").rows, IsEmpty());
}

TEST(ScriptData, TwoPricesOfTheProductAreNone) {
  EXPECT_THAT(state(R"([{"name":"Tweed skirt","price":"60.00"},)"
                    R"({"name":"Tweed skirt","price":"55.00"}])")
                  .rows,
              IsEmpty());
}

TEST(ScriptData, OtherProductsAreNotThePages) {
  EXPECT_THAT(state(R"({"name":"Silk scarf","price":"60.00","currency":"GBP"})").rows, IsEmpty());
}

TEST(ScriptData, ListsOfOtherThingsAreNoSizes) {
  const auto page = state(R"({"title":"Tweed skirt","price":"60.00","soldOut":true,)"
                          R"("variants":[{"title":"Heather"},{"title":"Moss"}]})");
  EXPECT_THAT(
      page.rows,
      ElementsAre(Cells{{"name", "Tweed skirt"}, {"price", "60.00"}, {"in_stock", "OutOfStock"}}));
}

}  // namespace
}  // namespace rangebook
