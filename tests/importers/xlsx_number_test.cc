// Serial days against the examples of ECMA-376 part 1, 18.17.4.2 (from memory) and known days;
// numbers and formats as spreadsheets write them.
#include "importers/xlsx_number.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

using Kind = NumberFormat::Kind;

TEST(XlsxNumber, NoNoiseOfBinaryFractions) {
  EXPECT_EQ(short_number("79.900000000000006"), "79.9");
  EXPECT_EQ(short_number("0.30000000000000004"), "0.30000000000000004");  // a sum, not 0.3
  EXPECT_EQ(short_number("79.9"), "79.9");
  EXPECT_EQ(short_number("4.0123456789014E12"), "4012345678901.4");
  EXPECT_EQ(short_number("5.0123450000001E+12"), "5012345000000.1");
  EXPECT_EQ(short_number("5012345678900"), "5012345678900");
  EXPECT_EQ(short_number("1E-3"), "0.001");
  EXPECT_EQ(short_number("-0.5"), "-0.5");
  EXPECT_EQ(short_number("12 x"), "12 x");
}

TEST(XlsxNumber, NoPointLooksLikeOneOfThousands) {
  EXPECT_EQ(plain_decimal("66.387"), "66.3870");
  EXPECT_EQ(plain_decimal("-1.299"), "-1.2990");
  EXPECT_EQ(plain_decimal("79.900"), "79.9");
  EXPECT_EQ(plain_decimal("79.000"), "79");
  EXPECT_EQ(plain_decimal("0.125"), "0.125");
  EXPECT_EQ(plain_decimal("1.5e2"), "150");
  EXPECT_EQ(plain_decimal("1000"), "1000");
  EXPECT_EQ(plain_decimal("1e9x"), "1e9x");  // no number: must end all the same
  EXPECT_EQ(plain_decimal(""), "");
}

TEST(XlsxNumber, DaysFrom1900) {
  EXPECT_EQ(date_text("1", false), "1900-01-01");
  EXPECT_EQ(date_text("59", false), "1900-02-28");
  EXPECT_EQ(date_text("60", false), std::nullopt);  // 29 February 1900 never was
  EXPECT_EQ(date_text("61", false), "1900-03-01");
  EXPECT_EQ(date_text("25569", false), "1970-01-01");
  EXPECT_EQ(date_text("46266", false), "2026-09-01");
  EXPECT_EQ(date_text("2958465", false), "9999-12-31");
  EXPECT_EQ(date_text("2958466", false), std::nullopt);
}

TEST(XlsxNumber, DaysFrom1904) {
  EXPECT_EQ(date_text("0", true), "1904-01-01");
  EXPECT_EQ(date_text("24107", true), "1970-01-01");
  EXPECT_EQ(date_text("44804", true), "2026-09-01");
}

TEST(XlsxNumber, TimesAreRoundedToTheSecond) {
  EXPECT_EQ(date_text("46266.604166666664", false), "2026-09-01T14:30:00");
  EXPECT_EQ(date_text("0.5", false), "12:00:00");
  EXPECT_EQ(date_text("46266.999999", false), "2026-09-02");
}

TEST(XlsxNumber, FormatsThatAreDates) {
  EXPECT_EQ(builtin_format(14).kind, Kind::date);
  EXPECT_EQ(builtin_format(20).kind, Kind::time);
  EXPECT_EQ(builtin_format(4).kind, Kind::number);
  EXPECT_EQ(read_format("dd/mm/yyyy").kind, Kind::date);
  EXPECT_EQ(read_format("[$-407]d. mmmm yyyy;@").kind, Kind::date);
  EXPECT_EQ(read_format("mmm").kind, Kind::date);
  EXPECT_EQ(read_format("[h]:mm").kind, Kind::time);
  EXPECT_EQ(read_format("hh:mm:ss").kind, Kind::time);
}

TEST(XlsxNumber, FormatsThatAreNone) {
  EXPECT_EQ(read_format("General").kind, Kind::number);
  EXPECT_EQ(read_format("[Red]0.00").kind, Kind::number);
  EXPECT_EQ(read_format("0 \"days\"").kind, Kind::number);
  EXPECT_EQ(read_format("0\\d").kind, Kind::number);
  EXPECT_EQ(read_format("0%").kind, Kind::percent);
  EXPECT_EQ(read_format("").kind, Kind::number);
  EXPECT_EQ(read_format("[").kind, Kind::number);
  EXPECT_EQ(read_format("\\").kind, Kind::number);
}

TEST(XlsxNumber, CurrenciesOfFormats) {
  EXPECT_EQ(read_format("#,##0.00 [$€-407]").currency, "€");
  EXPECT_EQ(read_format("\"£\"#,##0.00").currency, "£");
  EXPECT_EQ(read_format("[$EUR] #,##0.00").currency, "EUR");
  EXPECT_EQ(read_format("#,##0.00").currency, "");
}

TEST(XlsxNumber, Percentages) {
  EXPECT_EQ(percent_text("0.94"), "94%");
  EXPECT_EQ(percent_text("0.07"), "7%");
  EXPECT_EQ(percent_text("1"), "100%");
  EXPECT_EQ(percent_text("0.125"), "12.5%");
  EXPECT_EQ(percent_text("0"), "0%");
}

}  // namespace
}  // namespace rangebook
