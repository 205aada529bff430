// GTINs: the GS1 check digit, lengths, and equal numbers of different lengths.
#include "schema/gtin.h"

#include <gtest/gtest.h>

#include <string>

#include "tests/check_rows.h"

namespace rangebook {
namespace {

// tests/checks/gtin_cases.tsv names the source of each row.
TEST(Gtin, AgreesWithPublishedNumbers) {
  int valid = 0;
  int wrong = 0;
  for (const auto& row : check_rows("gtin_cases.tsv")) {
    const auto gtin = Gtin::parse(row[1]);
    EXPECT_EQ(gtin.has_value(), !row[2].empty()) << row[1];
    if (!gtin) {
      ++wrong;
      continue;
    }
    ++valid;
    EXPECT_EQ(gtin->value(), std::stoull(row[2])) << row[1];
  }
  EXPECT_GE(valid, 35);
  EXPECT_GE(wrong, 30);
}

// GS1 General Specifications: a shorter GTIN is the same number padded with zeros to 14 digits.
TEST(Gtin, EqualNumbersOfDifferentLengthsAreEqual) {
  EXPECT_EQ(Gtin::parse("042100005264"), Gtin::parse("0042100005264"));
  EXPECT_EQ(Gtin::parse("042100005264"), Gtin::parse("00042100005264"));
  EXPECT_EQ(Gtin::parse("40170725"), Gtin::parse("00000040170725"));
  EXPECT_NE(Gtin::parse("40170725"), Gtin::parse("59012344"));
}

// The sum with weights 3 and 1 finds every single wrong digit (a property of the modulus).
TEST(Gtin, EverySingleWrongDigitIsFound) {
  const std::string right = "6291041500213";  // worked example of GS1 Hong Kong
  ASSERT_TRUE(Gtin::parse(right));
  for (std::size_t i = 0; i < right.size(); ++i) {
    for (char digit = '0'; digit <= '9'; ++digit) {
      std::string changed = right;
      changed[i] = digit;
      EXPECT_EQ(Gtin::parse(changed).has_value(), changed == right) << changed;
    }
  }
}

TEST(Gtin, OtherTextIsNothing) {
  for (const auto* text : {"", " ", "-", "EAN 4015600608835", "4015600608835x", "401560060883",
                           "9501101530003 9501101530003", "１２３４５６７０", "123456789"}) {
    EXPECT_EQ(Gtin::parse(text), std::nullopt) << text;
  }
}

// Common practice, no source: exports fill empty cells with zeros.
TEST(Gtin, AllZerosAreNoArticle) {
  EXPECT_EQ(Gtin::parse("0000000000000"), std::nullopt);
  EXPECT_EQ(Gtin::parse("00000000"), std::nullopt);
}

TEST(GtinText, IsTheShortestFormAndReadsBack) {
  EXPECT_EQ(to_string(*Gtin::parse("40170725")), "40170725");
  EXPECT_EQ(to_string(*Gtin::parse("042100005264")), "0042100005264");
  EXPECT_EQ(to_string(*Gtin::parse("10614141543219")), "10614141543219");
  for (const auto& row : check_rows("gtin_cases.tsv")) {
    const auto gtin = Gtin::parse(row[1]);
    if (!gtin) continue;
    EXPECT_EQ(Gtin::parse(to_string(*gtin)), gtin) << row[1];
  }
}

}  // namespace
}  // namespace rangebook
