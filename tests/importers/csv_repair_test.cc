// Lines that break the rules: read the one way that fits, or not at all.
#include "importers/csv_repair.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

using Cells = std::vector<std::string>;

TEST(CsvRepair, AStrayQuoteInAQuotedCellIsText) {
  EXPECT_EQ(split_otherwise("M1,\"a \"tulip\" hem, lined\",79", {}, 3),
            (Cells{"M1", "a \"tulip\" hem, lined", "79"}));
}

TEST(CsvRepair, OneLineWithAnotherDelimiter) {
  EXPECT_EQ(split_otherwise("M1;Maya;79,90", {}, 3), (Cells{"M1", "Maya", "79,90"}));
}

TEST(CsvRepair, TwoReadingsAreNone) {
  EXPECT_EQ(split_otherwise("M1;Maya|79", {}, 2), std::nullopt);
}

TEST(CsvRepair, AnUnquotedDecimalCommaIsNotGuessed) {
  EXPECT_EQ(split_otherwise("M1,Maya,79,90", {}, 3), std::nullopt);
}

TEST(CsvRepair, EscapesStandForTheirSign) {
  std::string out;
  const CsvDialect dialect{',', '"', '\\', false};
  unescape_cell(R"(a\"b""c\\d\n)", dialect, out);
  EXPECT_EQ(out, R"(a"b"c\d\n)");
}

}  // namespace
}  // namespace rangebook
