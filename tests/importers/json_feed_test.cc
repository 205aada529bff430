// JSON feeds: lists, lists inside, products one a line, and what breaks them. The feeds are
// invented; RFC 8259 is the standard, JSON lines are common practice.
#include "importers/json_feed.h"

#include <gtest/gtest.h>

#include "importers/json_items.h"
#include "tests/importers/read_rows.h"
#include "tests/importers/recoded.h"

namespace rangebook {
namespace {

ReadRows read_json(const std::string& text, std::size_t chunk = 1 << 16) {
  TextSource source(text, chunk);
  return read_all(*open_json(source, 0));
}

const std::string kTwo = R"([{"id":"M1","title":"Maya","price":79.90,"url":"https://a.example/1"},
 {"id":"N2","title":"Nora \"knit\"","price":80}])";

TEST(JsonFeed, AListOfProducts) {
  for (const std::size_t chunk : {1U, 7U, 65536U}) {
    const auto out = read_json(kTwo, chunk);
    ASSERT_EQ(out.rows.size(), 2U);
    EXPECT_EQ(out.rows[0], (RowCells{{"line_code", "M1"},
                                     {"name", "Maya"},
                                     {"price", "79.9"},
                                     {"url", "https://a.example/1"}}));
    EXPECT_EQ(out.rows[1].at("name"), "Nora \"knit\"");
    EXPECT_EQ(out.origins[1].line, 2U);
    EXPECT_EQ(kTwo[out.origins[1].byte], '{');
    EXPECT_EQ(out.mapping, "products=[] line_code=id name=title price=price url=url");
  }
}

TEST(JsonFeed, AListSomewhereInside) {
  const auto out = read_json(R"({"name":"Feed","currency":"EUR","data":{"products":[
    {"name":"Maya","sku":"M1","variants":[{"size":"8","sku":"M1-8"},{"size":"10","sku":"M1-10"}]},
    {"name":"Nora","sku":"N2","variants":[{"size":"8","sku":"N2-8"}]}]}})");
  ASSERT_EQ(out.rows.size(), 3U);
  EXPECT_EQ(
      out.rows[1],
      (RowCells{{"line_code", "M1"}, {"name", "Maya"}, {"size", "10"}, {"variant_code", "M1-10"}}));
  EXPECT_TRUE(out.mapping.starts_with("products=data.products[]"));
}

TEST(JsonFeed, ProductsOneALine) {
  const auto out = read_json(
      "{\"name\":\"Maya\",\"price\":1}\n{\"name\":\"Nora\n"
      "{\"name\":\"Ida\",\"price\":3}\n");
  ASSERT_EQ(out.rows.size(), 2U);
  EXPECT_EQ(out.rows[1].at("name"), "Ida");
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].line, 2U);
}

TEST(JsonFeed, OneProductAlone) {
  EXPECT_EQ(read_json("{\n \"name\": \"Maya\",\n \"price\": 79.90,\n \"sizes\": [8, 10]\n}").rows,
            (std::vector<RowCells>{{{"name", "Maya"}, {"price", "79.9"}, {"size", "8|10"}}}));
}

TEST(JsonFeed, OtherEncodings) {
  const std::string text =
      R"([{"name":"Robe d’été","price":"79 €"},{"name":"Crêpe","price":"1 €"}])";
  for (const char* name : {"UTF-16LE", "windows-1252"}) {
    const auto out = read_json(recoded(text, name));
    ASSERT_EQ(out.rows.size(), 2U) << name;
    EXPECT_EQ(out.rows[0].at("name"), "Robe d’été");
  }
}

TEST(JsonFeed, ALongNumberKeepsItsDigits) {
  const auto out = read_json(R"([{"name":"a","gtin":5012345678900,"price":19.990000000000001}])");
  EXPECT_EQ(out.rows[0].at("gtin"), "5012345678900");
  EXPECT_EQ(out.rows[0].at("price"), "19.990000000000001");
}

TEST(JsonFeed, ThreeDecimalsAreNoThousands) {
  const auto out = read_json(R"([{"name":"a","price":66.387},{"name":"b","price":79.900}])");
  EXPECT_EQ(out.rows[0].at("price"), "66.3870");
  EXPECT_EQ(out.rows[1].at("price"), "79.9");
}

TEST(JsonFeed, WhatHoldsNoProductsIsRefused) {
  for (const char* text : {"", "[]", "{}", "[1,2]", "{\"a\":{\"b\":[{\"c\":1}]}}", "not json"}) {
    const auto out = read_json(text);
    EXPECT_TRUE(out.rows.empty()) << text;
    ASSERT_EQ(out.rejections.size(), 1U) << text;
    EXPECT_EQ(out.rejections[0].kind, RejectionKind::unreadable_document);
  }
}

TEST(JsonFeed, AFeedThatBreaksOffKeepsWhatWasWhole) {
  const auto out = read_json(kTwo.substr(0, kTwo.size() - 9));
  EXPECT_EQ(out.rows.size(), 1U);
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_NE(out.rejections[0].what.find("breaks off"), std::string::npos);
}

TEST(JsonFeed, NestingWithoutEndIsRefused) {
  const auto out = read_json(kTwo.substr(0, kTwo.size() - 1) + "," + std::string(100'000, '['));
  EXPECT_EQ(out.rows.size(), 2U);
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].kind, RejectionKind::over_limit);
}

TEST(JsonFeed, AProductWithoutEndIsRefusedAndReadingGoesOn) {
  const std::string text = R"([{"name":"a","price":1},{"name":"b","price":2},{"name":")" +
                           std::string(kMaxItemBytes + 10, 'x') + R"("},{"name":"c","price":3}])";
  const auto out = read_json(text);
  EXPECT_EQ(out.rows.size(), 3U);
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].kind, RejectionKind::over_limit);
}

}  // namespace
}  // namespace rangebook
