// Products of feeds as trees, and the rows they give. Shapes of feeds are common practice, no
// source.
#include "importers/feed_rows.h"

#include <gtest/gtest.h>

#include <map>

namespace rangebook {
namespace {

FeedNode leaf(std::string name, std::string text) { return {std::move(name), std::move(text), {}}; }
FeedNode node(std::string name, std::vector<FeedNode> parts) {
  return {std::move(name), {}, std::move(parts)};
}

using Cells = std::map<std::string, std::string>;

std::vector<Cells> rows_of(const FeedNode& item) {
  FeedNames names;
  std::vector<Cells> out;
  for (const auto& row : feed_rows(item, names)) {
    auto& cells = out.emplace_back();
    for (std::size_t i = 0; i < kFieldCount; ++i) {
      if (!row.cells[i].empty())
        cells[std::string(to_string(static_cast<Field>(i)))] = row.cells[i];
    }
  }
  return out;
}

using Rows = std::vector<Cells>;

TEST(FeedRows, AFlatProductIsOneRow) {
  EXPECT_EQ(rows_of(node("item", {leaf("id", "M1"), leaf("title", "Maya"),
                                  leaf("price", "79.90 EUR"), leaf("shipping_weight", "1")})),
            (Rows{{{"line_code", "M1"}, {"name", "Maya"}, {"price", "79.90 EUR"}}}));
}

TEST(FeedRows, ASalePriceMakesThePriceTheFullOne) {
  EXPECT_EQ(rows_of(node("item", {leaf("title", "Maya"), leaf("price", "100 EUR"),
                                  leaf("sale_price", "80 EUR")})),
            (Rows{{{"name", "Maya"}, {"price", "80 EUR"}, {"full_price", "100 EUR"}}}));
}

TEST(FeedRows, VariantsInheritAndDiffer) {
  const auto rows = rows_of(node(
      "product",
      {leaf("id", "M1"), leaf("title", "Maya"), leaf("body_html", "<p>Soft &amp; fluid</p>"),
       node("variants", {leaf("sku", "M1-8"), leaf("title", "Navy / 8"), leaf("price", "79.90")}),
       node("variants", {leaf("sku", "M1-10"), leaf("title", "Navy / 10"), leaf("price", "89.90"),
                         leaf("available", "false")})}));
  EXPECT_EQ(rows, (Rows{{{"line_code", "M1"},
                         {"name", "Maya"},
                         {"description", "Soft & fluid"},
                         {"variant_code", "M1-8"},
                         {"colour", "Navy"},
                         {"size", "8"},
                         {"price", "79.90"}},
                        {{"line_code", "M1"},
                         {"name", "Maya"},
                         {"description", "Soft & fluid"},
                         {"variant_code", "M1-10"},
                         {"colour", "Navy"},
                         {"size", "10"},
                         {"price", "89.90"},
                         {"in_stock", "false"}}}));
}

TEST(FeedRows, OptionsNameTheirValues) {
  const auto rows =
      rows_of(node("product", {leaf("title", "Maya"), node("options", {leaf("name", "Size")}),
                               node("options", {leaf("name", "Color")}),
                               node("variants", {leaf("option1", "8"), leaf("option2", "navy")})}));
  EXPECT_EQ(rows, (Rows{{{"name", "Maya"}, {"size", "8"}, {"colour", "navy"}}}));
}

TEST(FeedRows, ColoursWithSizesInside) {
  const auto rows = rows_of(node(
      "product",
      {leaf("name", "Maya"),
       node("colours",
            {leaf("name", "navy"), node("sizes", {leaf("label", "8"), leaf("in_stock", "true")}),
             node("sizes", {leaf("label", "10"), leaf("in_stock", "false")})}),
       node("colours", {leaf("name", "ecru"), leaf("price", "70")})}));
  EXPECT_EQ(rows,
            (Rows{{{"name", "Maya"}, {"colour", "navy"}, {"size", "8"}, {"in_stock", "true"}},
                  {{"name", "Maya"}, {"colour", "navy"}, {"size", "10"}, {"in_stock", "false"}},
                  {{"name", "Maya"}, {"colour", "ecru"}, {"price", "70"}}}));
}

TEST(FeedRows, ListsOfPlainValues) {
  EXPECT_EQ(rows_of(node("product", {leaf("name", "Maya"), leaf("sizes", "8"), leaf("sizes", "10"),
                                     leaf("image", "a.jpg"), leaf("image", "b.jpg")})),
            (Rows{{{"name", "Maya"}, {"size", "8|10"}, {"image", "a.jpg"}}}));
}

TEST(FeedRows, ObjectsInThePlaceOfValues) {
  EXPECT_EQ(
      rows_of(node(
          "product",
          {leaf("name", "Maya"), node("price", {leaf("amount", "79.90"), leaf("currency", "EUR")}),
           node("image", {leaf("src", "a.jpg")}),
           node("attributes", {leaf("name", "Colour"), leaf("value", "navy")})})),
      (Rows{{{"name", "Maya"}, {"price", "79.90 EUR"}, {"image", "a.jpg"}, {"colour", "navy"}}}));
}

TEST(FeedRows, WhatIsAProduct) {
  EXPECT_EQ(product_fields({"title", "price", "id"}, {}), 3U);
  EXPECT_EQ(product_fields({"title", "currency", "description"}, {}), std::nullopt);
  EXPECT_EQ(product_fields({"price", "sku"}, {}), std::nullopt);
}

ColumnChoice choice(std::string column, std::optional<Field> field) {
  return {.column = std::move(column), .field = field};
}

FeedNames chosen(std::vector<ColumnChoice> choices) {
  FeedNames names;
  names.choices = FeedChoices(std::move(choices));
  names.keep_columns = true;
  names.keep_examples = true;
  return names;
}

TEST(FeedRows, WhatIsSaidOfANameWins) {
  auto names = chosen({choice("modellbez", Field::name), choice("wert", Field::price),
                       choice("title", std::nullopt), choice("nowhere", Field::size)});
  const auto rows = feed_rows(node("item", {leaf("title", "Notes"), leaf("modellbez", "Maya"),
                                            leaf("price", "12"), leaf("wert", "79.90")}),
                              names);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0][Field::name], "Maya");
  EXPECT_EQ(rows[0][Field::price], "79.90");
  EXPECT_EQ(names.missing(), std::vector<std::string>{"nowhere"});
}

TEST(FeedRows, AWayTellsNamesApart) {
  auto names =
      chosen({choice("variants.price", Field::full_price), choice("variants.now", Field::price)});
  const auto rows = feed_rows(
      node("item", {leaf("title", "Maya"), leaf("price", "99"),
                    node("variants", {leaf("size", "8"), leaf("price", "89"), leaf("now", "59")})}),
      names);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0][Field::price], "59");
  EXPECT_EQ(rows[0][Field::full_price], "89");
}

TEST(FeedRows, AWayLeadsThroughObjects) {
  auto names = chosen({choice("pricing.retail.gross", Field::price)});
  const auto rows = feed_rows(
      node("item", {leaf("title", "Maya"),
                    node("pricing", {node("retail", {leaf("gross", "79.90"), leaf("net", "67")}),
                                     node("trade", {leaf("gross", "40")})})}),
      names);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_EQ(rows[0][Field::price], "79.90");
  EXPECT_TRUE(names.missing().empty());
}

TEST(FeedRows, ColumnsOfThePreviewAreWays) {
  auto names = chosen({choice("note", std::nullopt)});
  feed_rows(node("item", {leaf("title", "Maya"), leaf("note", "x"), leaf("other", "y"),
                          node("variants", {leaf("size", "8"), leaf("price", "79.90 EUR")})}),
            names);
  feed_rows(node("item", {leaf("title", "Nora"),
                          node("variants", {leaf("size", "10"), leaf("price", "79.90 EUR")})}),
            names);
  const auto columns = columns_of(names);
  ASSERT_EQ(columns.size(), 5U);
  EXPECT_EQ(columns[0].name, "title");
  EXPECT_EQ(columns[0].examples.size(), 2U);
  EXPECT_EQ(columns[1].known, ColumnPreview::Known::by_choice);
  EXPECT_TRUE(columns[1].fields.empty());
  EXPECT_EQ(columns[2].name, "other");
  EXPECT_EQ(columns[3].name, "variants.size");
  EXPECT_EQ(columns[4].name, "variants.price");
  EXPECT_EQ(columns[4].fields, std::vector<Field>{Field::price});
  EXPECT_EQ(columns[4].examples.size(), 1U);
}

}  // namespace
}  // namespace rangebook
