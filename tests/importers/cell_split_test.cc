// Cells that hold two things. Common practice in exports, no source.
#include "importers/cell_split.h"

#include <gtest/gtest.h>

#include "tests/importers/read_rows.h"

namespace rangebook {
namespace {

std::string colour_size(std::string_view cell) {
  const auto parts = split_colour_size(cell);
  return std::string(parts.colour) + "+" + std::string(parts.size);
}

TEST(CellSplit, ColourAndSizeInEitherOrder) {
  EXPECT_EQ(colour_size("Navy / 12"), "Navy+12");
  EXPECT_EQ(colour_size("12 | Navy"), "Navy+12");
  EXPECT_EQ(colour_size("Off white, XL"), "Off white+XL");
  EXPECT_EQ(colour_size("Navy/Ecru / 38"), "Navy/Ecru+38");
}

TEST(CellSplit, OneThingAlone) {
  EXPECT_EQ(colour_size("Navy"), "Navy+");
  EXPECT_EQ(colour_size("8/10"), "+8/10");
  EXPECT_EQ(colour_size("One size"), "+One size");
  EXPECT_EQ(colour_size("Navy/Ecru"), "Navy/Ecru+");
}

TEST(CellSplit, ALabelOfTheSameFieldIsTakenOff) {
  EXPECT_EQ(without_label("Size: 8-20", Field::size), "8-20");
  EXPECT_EQ(without_label("Größe: 38", Field::size), "38");
  EXPECT_EQ(without_label("Shell: 100% wool", Field::composition), "Shell: 100% wool");
}

std::string prices(std::string_view cell) {
  const auto parts = split_price(cell);
  return parts ? std::string(parts->now) + "+" + std::string(parts->was) : "whole";
}

TEST(CellSplit, PriceAndFormerPrice) {
  EXPECT_EQ(prices("€ 79,99 (was € 99,99)"), "€ 79,99+€ 99,99");
  EXPECT_EQ(prices("was £90 now £60"), "£60+£90");
  EXPECT_EQ(prices("79,90 € statt 99,90 €"), "79,90 €+99,90 €");
}

TEST(CellSplit, PricesThatAreNotTwo) {
  EXPECT_EQ(prices("€ 79,99"), "whole");
  EXPECT_EQ(prices("was € 99,99"), "whole");
  EXPECT_EQ(prices("10 12 was 14 was 16"), "whole");
}

TEST(CellSplit, InATable) {
  const auto out =
      read_csv("Artikel;Farbe / Größe;Preis (EUR)\nKleid;Marine / 38;\"79,99 (statt 99,99)\"\n");
  ASSERT_EQ(out.rows.size(), 1U);
  EXPECT_EQ(out.rows[0], (RowCells{{"name", "Kleid"},
                                   {"colour", "Marine"},
                                   {"size", "38"},
                                   {"price", "79,99"},
                                   {"full_price", "99,99"},
                                   {"currency", "EUR"}}));
}

TEST(CellSplit, SalePricesBesidePrices) {
  const auto out = read_csv("title,price,sale_price\nMaya,100,80\nNora,90,\n");
  ASSERT_EQ(out.rows.size(), 2U);
  EXPECT_EQ(out.rows[0], (RowCells{{"name", "Maya"}, {"price", "80"}, {"full_price", "100"}}));
  EXPECT_EQ(out.rows[1], (RowCells{{"name", "Nora"}, {"price", "90"}, {"full_price", "90"}}));
}

}  // namespace
}  // namespace rangebook
