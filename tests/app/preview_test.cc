// A capture shown before it is kept. Invented rows.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>

#include "tests/tracker/store/temp_book.h"
#include "tracker/app/pipeline.h"

namespace rangebook {
namespace {

class Previews : public ::testing::Test {
 protected:
  MappingPreview preview(const std::string& name, const std::string& text,
                         const Shop& shop = mill_shop()) {
    std::ofstream(folder_.file(name)) << text;
    Book book = Book::open(folder_.file("b.rangebook"), true);
    book.put_shop(shop);
    CaptureRequest request;
    request.files = {folder_.file(name)};
    request.shop = "mill";
    request.season = "AW25";
    request.on = parse_day("2025-09-01");
    auto taken = preview_capture(book, request, {});
    EXPECT_TRUE(book.captures("mill").empty());
    return std::get<MappingPreview>(std::move(taken));
  }

  TempFolder folder_;
};

const ColumnPreview& column_of(const MappingPreview& preview, Field field) {
  static const ColumnPreview kNone;
  for (const auto& column : preview.documents.at(0).columns) {
    if (std::find(column.fields.begin(), column.fields.end(), field) != column.fields.end()) {
      return column;
    }
  }
  return kNone;
}

std::string doubts_of(const ColumnPreview& column) {
  std::string all;
  for (const auto& doubt : column.doubts) all += doubt + "\n";
  return all;
}

std::string decimal_of(const MappingPreview& preview) {
  for (const auto& found : preview.documents.at(0).detected) {
    if (found.what == "decimal sign") return found.value;
  }
  return {};
}

TEST_F(Previews, CellsAndWhatTheyAreReadAs) {
  const auto seen = preview("a.csv",
                            "code;name;size;price;stock;Seen\nM1;Maya;8-12;79,90;yes;window\n"
                            "M2;Nora;10|12;1.299,00;sold out;\n");
  EXPECT_EQ(seen.lines, 2U);
  EXPECT_EQ(column_of(seen, Field::price).examples.at(1).read, "1299.00 GBP");
  EXPECT_EQ(column_of(seen, Field::size).examples.at(0).read, "8, 10, 12 (uk)");
  EXPECT_EQ(column_of(seen, Field::in_stock).examples.at(0).read, "in stock");
  EXPECT_EQ(column_of(seen, Field::name).examples.at(0).read, "");
  EXPECT_EQ(decimal_of(seen), "comma, shown by 2 prices");
}

TEST_F(Previews, ADecimalSignThatIsBoth) {
  const auto seen =
      preview("a.csv", "code;name;price\nM1;Maya;79,90\nM2;Nora;79.90\nM3;Ida;1.299\n");
  EXPECT_EQ(decimal_of(seen), "point (1) and comma (1)");
  EXPECT_NE(doubts_of(column_of(seen, Field::price)).find("decimal point"), std::string::npos);
}

TEST_F(Previews, RefusedValuesAreToldAtTheirColumn) {
  const auto seen = preview("a.csv", "code,name,price\nM1,Maya,ask\nM2,Nora,79.90\n");
  EXPECT_EQ(seen.documents.at(0).refused_rows, 1U);
  EXPECT_NE(doubts_of(column_of(seen, Field::price)).find("1 refused, first in line 2"),
            std::string::npos);
  EXPECT_EQ(seen.rejections.size(), 1U);
}

TEST_F(Previews, SizesOfNoKnownSystem) {
  Shop shop = mill_shop();
  shop.sizes = SizeSystem::unknown;
  const auto seen = preview("a.csv", "code,name,size,price\nM1,Maya,Gr. 3,79.90\n", shop);
  const auto doubts = doubts_of(column_of(seen, Field::size));
  EXPECT_NE(doubts.find("Sizes of 1 line"), std::string::npos) << doubts;
  EXPECT_NE(doubts.find("shop add mill --sizes"), std::string::npos) << doubts;
}

TEST_F(Previews, WhatTheDocumentLacks) {
  const auto seen = preview("a.csv", "name,Seen\nMaya,window\n");
  EXPECT_EQ(seen.documents.at(0).doubts,
            (std::vector<std::string>{
                "Nothing gives a price.", "Nothing gives sizes.",
                "Nothing gives a code or an address: lines are known by their name alone."}));
}

TEST_F(Previews, APageTellsItsSyntaxesAndTheirConflicts) {
  const auto seen = preview(
      "a.html",
      "<html><body><div itemscope itemtype=\"https://schema.org/Product\">"
      "<h1 itemprop=name>Maya dress</h1><div itemprop=offers itemscope "
      "itemtype=\"https://schema.org/Offer\"><meta itemprop=price content=\"69.90\">"
      "<meta itemprop=priceCurrency content=GBP></div></div>"
      "<script type=\"application/ld+json\">{\"@context\":\"https://schema.org\",\"@type\":"
      "\"Product\",\"name\":\"Maya dress\",\"sku\":\"M1\",\"offers\":{\"@type\":\"Offer\","
      "\"price\":\"79.90\",\"priceCurrency\":\"GBP\",\"availability\":\"InStock\"}}</script>"
      "</body></html>");
  const auto& page = seen.documents.at(0);
  ASSERT_GE(page.syntaxes.size(), 2U);
  EXPECT_EQ(page.syntaxes[0].syntax, "JSON-LD");
  EXPECT_EQ(page.syntaxes[0].rows, 1U);
  ASSERT_EQ(page.conflict_count, 1U);
  EXPECT_EQ(page.conflicts[0],
            (SyntaxConflict{"Maya dress", Field::price, "JSON-LD", "79.90", "microdata", "69.90"}));
  EXPECT_EQ(column_of(seen, Field::price).examples.at(0).read, "79.90 GBP");
}

TEST_F(Previews, AFeedTellsItsNames) {
  const auto seen =
      preview("a.json", R"([{"sku":"M1","title":"Maya","price":"79.90","mood":"calm"}])");
  EXPECT_EQ(column_of(seen, Field::name).name, "title");
  EXPECT_EQ(column_of(seen, Field::name).examples.at(0).text, "Maya");
  const auto& columns = seen.documents.at(0).columns;
  EXPECT_TRUE(columns.back().fields.empty());
  EXPECT_EQ(columns.back().name, "mood");
}

}  // namespace
}  // namespace rangebook
