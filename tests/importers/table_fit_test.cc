// A profile has to fit before it is used unasked. Invented rows.
#include "importers/table_fit.h"

#include <gtest/gtest.h>

#include "tests/importers/text_source.h"

namespace rangebook {
namespace {

constexpr std::string_view kTable = "Ding;Wert\nMaya;79,90\nNora;59,90\n";

TableOptions options_for(const std::string& name, const std::string& price) {
  TableOptions options;
  options.columns = {{name, Field::name}, {price, Field::price}};
  return options;
}

bool fits(std::string_view text, const TableOptions& options) {
  return table_fits(text, options, options.columns);
}

TEST(TableFit, AllNamedColumnsHaveToBeThere) {
  EXPECT_TRUE(fits(kTable, options_for("Ding", "Wert")));
  EXPECT_TRUE(fits(kTable, options_for("#1", "wert")));
  EXPECT_FALSE(fits(kTable, options_for("Ding", "Preis")));
  EXPECT_FALSE(fits(kTable, options_for("Ding", "#3")));
}

TEST(TableFit, ADelimiterThatLeavesNoNameDoesNotFit) {
  TableOptions options;
  options.delimiter = '|';
  EXPECT_FALSE(fits("name;price\nMaya;79,90\n", options));
  options.delimiter = ';';
  EXPECT_TRUE(fits("name;price\nMaya;79,90\n", options));
  EXPECT_FALSE(fits("", options));
}

TEST(TableFit, WhatElseIsSaidNeedNotBeThere) {
  auto options = options_for("Ding", "Wert");
  options.columns.push_back({"Farbe", Field::colour});
  EXPECT_TRUE(table_fits(kTable, options, options_for("Ding", "Wert").columns));
}

TEST(TableFit, AWorkbookThatIsNoneFitsNothing) {
  EXPECT_FALSE(workbook_fits("no workbook", options_for("Ding", "Wert"), {}));
}

TEST(FrontSource, TheFrontIsReadTwiceTheRestOnce) {
  const std::string text(3 * kFrontBytes / 2, 'x');
  TextSource source(text, 1 << 16);
  FrontSource front(source);
  EXPECT_EQ(front.front(), text.substr(0, kFrontBytes));
  std::string all;
  for (auto chunk = front.next_chunk(); !chunk.empty(); chunk = front.next_chunk()) all += chunk;
  EXPECT_EQ(all, text);
}

TEST(FrontSource, NotLookedAtItChangesNothing) {
  TextSource source("name,price\n");
  FrontSource front(source);
  EXPECT_EQ(front.next_chunk(), "name,price\n");
  EXPECT_TRUE(front.next_chunk().empty());
}

}  // namespace
}  // namespace rangebook
