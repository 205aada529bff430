// Currencies by ISO 4217 and the plain text of an amount.
#include "schema/money.h"

#include <gtest/gtest.h>

#include <limits>
#include <string>

#include "schema/embedded.h"

namespace rangebook {
namespace {

Money money(MinorUnits minor, std::string_view code) { return {minor, *Currency::from_code(code)}; }

// ISO 4217 list one, column "minor unit" (list of 2024-06-25 by the npm package currency-codes,
// MIT).
TEST(Currency, MinorDigitsAreThoseOfIso4217) {
  const std::pair<std::string_view, int> expected[] = {
      {"EUR", 2}, {"GBP", 2}, {"USD", 2}, {"CHF", 2}, {"SEK", 2}, {"HUF", 2},
      {"IDR", 2}, {"JPY", 0}, {"KRW", 0}, {"CLP", 0}, {"ISK", 0}, {"VND", 0},
      {"PYG", 0}, {"XOF", 0}, {"KWD", 3}, {"BHD", 3}, {"OMR", 3}, {"JOD", 3},
      {"TND", 3}, {"IQD", 3}, {"LYD", 3}, {"CLF", 4}, {"UYW", 4}};
  for (const auto& [code, exponent] : expected) {
    const auto currency = Currency::from_code(code);
    ASSERT_TRUE(currency) << code;
    EXPECT_EQ(currency->exponent(), exponent) << code;
    EXPECT_EQ(currency->code(), code);
  }
}

TEST(Currency, CodesAreReadInAnyCase) {
  EXPECT_EQ(Currency::from_code("eur"), Currency::from_code("EUR"));
  EXPECT_EQ(Currency::from_code("Gbp"), Currency::from_code("GBP"));
}

// Withdrawn codes stand in list three of ISO 4217, not in list one.
TEST(Currency, WhatIsoDoesNotListIsNothing) {
  for (const auto* code :
       {"", "E", "EU", "EURO", "DEM", "ITL", "QQQ", "E R", "€", "12A", "\xFF\xFF\xFF"}) {
    EXPECT_EQ(Currency::from_code(code), std::nullopt) << code;
  }
}

TEST(Currency, EveryRowOfTheTableIsFoundAndRowsAreSorted) {
  std::string before;
  for (const auto& cells : table_rows("tables/currencies.tsv")) {
    const auto currency = Currency::from_code(cells[0]);
    ASSERT_TRUE(currency) << cells[0];
    EXPECT_EQ(std::to_string(currency->exponent()), cells[1]);
    EXPECT_LT(before, cells[0]);
    before = cells[0];
  }
  EXPECT_LT(Currency::from_code("AED"), Currency::from_code("ZWG"));
}

TEST(MoneyText, HasTheDigitsOfItsCurrency) {
  EXPECT_EQ(decimal_text(money(7990, "EUR")), "79.90");
  EXPECT_EQ(decimal_text(money(1200, "JPY")), "1200");
  EXPECT_EQ(decimal_text(money(1200, "KWD")), "1.200");
  EXPECT_EQ(decimal_text(money(5, "EUR")), "0.05");
  EXPECT_EQ(decimal_text(money(0, "KWD")), "0.000");
  EXPECT_EQ(decimal_text(money(0, "JPY")), "0");
  EXPECT_EQ(to_string(money(7990, "EUR")), "79.90 EUR");
}

TEST(MoneyText, HoldsAtTheEndsOfTheRange) {
  constexpr auto kLowest = std::numeric_limits<MinorUnits>::min();
  constexpr auto kHighest = std::numeric_limits<MinorUnits>::max();
  EXPECT_EQ(decimal_text(money(-5, "EUR")), "-0.05");
  EXPECT_EQ(decimal_text(money(kLowest, "EUR")), "-92233720368547758.08");
  EXPECT_EQ(decimal_text(money(kHighest, "JPY")), "9223372036854775807");
}

}  // namespace
}  // namespace rangebook
