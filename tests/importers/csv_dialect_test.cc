// Dialects that a few lines prove, and words a shop uses that must not be taken for delimiters.
#include "importers/csv_dialect.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

CsvDialect detect(std::string_view text, const CsvDialectOptions& options = {}) {
  return detect_dialect(text, true, options);
}

TEST(CsvDialect, AHeaderOfKnownNamesSettlesTheDelimiter) {
  EXPECT_EQ(detect("line_code;name;price\nM1;Maya, navy;79,90\n").delimiter, ';');
  EXPECT_EQ(detect("line_code|name|price\nM1|Maya, navy|79,90\n").delimiter, '|');
}

TEST(CsvDialect, ADecimalCommaIsNoDelimiter) {
  EXPECT_EQ(detect("alpha;beta;gamma\n1,5;2,5;3,5\n4,5;5,5;6,5\n").delimiter, ';');
}

TEST(CsvDialect, ColumnsLinedUpByHand) {
  const auto found = detect(
      "name         colour    price\nMaya dress   navy      79.90\n"
      "Nora blouse  off white 80.00\n");
  EXPECT_TRUE(found.gaps);
  EXPECT_EQ(to_string(found), "delimiter=wide gap");
}

TEST(CsvDialect, OneColumnOfSentencesStaysOne) {
  EXPECT_EQ(detect("Name\nMaya wrap dress\nNora blouse\nIda: a knit\n").delimiter, ',');
}

TEST(CsvDialect, QuotesAndEscapes) {
  EXPECT_EQ(detect("name,price\n'Maya, navy',79\n'Nora',80\n").quote, '\'');
  EXPECT_EQ(detect("name,price\nWomen's dress,79\nMen's shirt,80\n").quote, '"');
  EXPECT_EQ(detect("name,price\n\"a \\\"b\\\" c, d\",79\n").escape, '\\');
}

TEST(CsvDialect, WhatTheUserSaysStands) {
  EXPECT_EQ(detect("a,b\n1,2\n", {';', std::nullopt}).delimiter, ';');
  EXPECT_EQ(detect("a,b\n'1',2\n", {std::nullopt, '"'}).quote, '"');
}

}  // namespace
}  // namespace rangebook
