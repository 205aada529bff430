// Tables without a header: what their columns hold tells what they mean, or nothing is said.
// Invented rows.
#include "importers/column_guess.h"

#include <gtest/gtest.h>

#include "tests/importers/read_rows.h"

namespace rangebook {
namespace {

TEST(ColumnGuess, ByContent) {
  const auto out = read_csv(
      "M1,Maya wrap dress,navy,8,79.90,99.90,EUR,yes,\"94% viscose, 6% silk\",https://a.example/1\n"
      "M1,Maya wrap dress,navy,10,79.90,99.90,EUR,no,\"94% viscose, 6% silk\",https://a.example/1\n"
      "N2,Nora blouse,ecru,8,59.90,59.90,EUR,yes,100% silk,https://a.example/2\n");
  ASSERT_EQ(out.rows.size(), 3U);
  EXPECT_EQ(out.rows[0], (RowCells{{"line_code", "M1"},
                                   {"name", "Maya wrap dress"},
                                   {"colour", "navy"},
                                   {"size", "8"},
                                   {"price", "79.90"},
                                   {"full_price", "99.90"},
                                   {"currency", "EUR"},
                                   {"in_stock", "yes"},
                                   {"composition", "94% viscose, 6% silk"},
                                   {"url", "https://a.example/1"}}));
}

TEST(ColumnGuess, AGuessIsSaid) {
  const auto out = read_csv("M1,Maya dress,79.90\nN2,Nora knit,59.90\nO3,Ida coat,99.90\n");
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].refused, Refused::nothing);
  EXPECT_NE(out.mapping.find("guessed"), std::string::npos);
  EXPECT_EQ(out.rows.size(), 3U);
}

TEST(ColumnGuess, PricesThatCrossAreNotTaken) {
  const auto out =
      read_csv("M1,Maya dress,79.90,99.90\nN2,Nora knit,59.90,39.90\nO3,Ida coat,99.90,99.90\n");
  ASSERT_EQ(out.rows.size(), 3U);
  EXPECT_FALSE(out.rows[0].contains("price"));
  EXPECT_FALSE(out.rows[0].contains("full_price"));
}

TEST(ColumnGuess, NumbersAloneSayNothing) {
  const auto out = read_csv("1,2,3\n4,5,6\n7,8,9\n");
  EXPECT_TRUE(out.rows.empty());
  ASSERT_EQ(out.rejections.size(), 1U);
  EXPECT_EQ(out.rejections[0].refused, Refused::row);
}

}  // namespace
}  // namespace rangebook
