// What a preview shows of the columns of a table. Invented rows.
#include "importers/column_examples.h"

#include <gtest/gtest.h>

#include "importers/csv_reader.h"
#include "tests/importers/text_source.h"

namespace rangebook {
namespace {

DocumentPreview preview_of(const std::string& text, const TableOptions& options = {}) {
  TextSource source(text);
  const auto reader = open_csv(source, 0, options);
  reader->keep_examples();
  while (reader->next() != RowReader::Step::end) continue;
  return reader->preview();
}

std::string detected(const DocumentPreview& preview, const std::string& what) {
  for (const auto& found : preview.detected) {
    if (found.what == what) return found.value + (found.stated ? " (stated)" : "");
  }
  return {};
}

TEST(ColumnExamples, EveryColumnWithThreeDifferentCells) {
  const auto preview = preview_of(
      "name;price;Seen\nMaya;79,90;window\nMaya;79,90;\nNora;59,90;rail\nIda;40;\nEva;30;x\n");
  ASSERT_EQ(preview.columns.size(), 3U);
  EXPECT_EQ(preview.columns[0].fields, std::vector{Field::name});
  ASSERT_EQ(preview.columns[0].examples.size(), kPreviewExamples);
  EXPECT_EQ(preview.columns[0].examples[1].text, "Nora");
  EXPECT_TRUE(preview.columns[2].fields.empty());
  EXPECT_EQ(preview.columns[2].examples.size(), 3U);
  EXPECT_EQ(detected(preview, "delimiter"), "semicolon");
  EXPECT_EQ(detected(preview, "column names"), "line 1");
}

TEST(ColumnExamples, ACellWithTwoPricesGivesBoth) {
  const auto preview = preview_of("name,price\nMaya,\"\u20AC 79,99 (was \u20AC 99,99)\"\n");
  const auto& fields = preview.columns.at(1).examples.at(0).fields;
  ASSERT_EQ(fields.size(), 2U);
  EXPECT_EQ(fields[1].field, Field::full_price);
  EXPECT_NE(fields[1].text.find("99,99"), std::string::npos);
}

TEST(ColumnExamples, TwoColumnsForOneFieldAreDoubted) {
  const auto preview = preview_of("name,price,Preis\nMaya,79.90,80\n");
  ASSERT_EQ(preview.columns.size(), 3U);
  EXPECT_TRUE(preview.columns[2].fields.empty());
  EXPECT_EQ(preview.columns[2].doubts,
            std::vector<std::string>{"Two columns for price: it is read from column 2."});
}

TEST(ColumnExamples, AGuessIsToldForEachColumn) {
  const auto preview = preview_of("M1,Maya,79.90\nM2,Nora,59.90\nM3,Ida,40.00\n");
  ASSERT_EQ(preview.columns.size(), 3U);
  EXPECT_EQ(preview.columns[2].known, ColumnPreview::Known::by_values);
  EXPECT_EQ(preview.columns[2].doubts.size(), 1U);
  EXPECT_EQ(detected(preview, "column names"), "none");
}

TEST(ColumnExamples, ATableWithoutANameShowsItsCellsAllTheSame) {
  const auto preview = preview_of("Ding,Wert\nMaya,79.90\nNora,59.90\n");
  ASSERT_EQ(preview.columns.size(), 2U);
  EXPECT_EQ(preview.columns[0].name, "Ding");
  ASSERT_FALSE(preview.columns[0].examples.empty());
  EXPECT_EQ(preview.columns[0].examples[0].text, "Maya");
}

TEST(ColumnExamples, ChoicesAndMissingColumns) {
  TableOptions options;
  options.columns = {{"Ding", Field::name}, {"Wert", Field::price}, {"Prise", Field::full_price}};
  options.delimiter = ';';
  const auto preview = preview_of("Ding;Wert\nMaya;79.90\nNora;59.90\n", options);
  ASSERT_EQ(preview.columns.size(), 2U);
  EXPECT_EQ(preview.columns[1].known, ColumnPreview::Known::by_choice);
  EXPECT_EQ(preview.missing, std::vector<std::string>{"Prise"});
  EXPECT_EQ(detected(preview, "delimiter"), "semicolon (stated)");
}

TEST(ColumnExamples, WhatWasLeftOutIsTold) {
  const auto preview = preview_of("Range list\n\nname,price,size\nMaya,79.90,8\n\nTotal,79.90,\n");
  EXPECT_EQ(detected(preview, "column names"), "line 3");
  EXPECT_EQ(detected(preview, "lines above the table"), "1, left out");
  EXPECT_EQ(detected(preview, "notes and totals"), "1, left out (line 6)");
}

}  // namespace
}  // namespace rangebook
