// Reading one price: worked cases of the rules in tracker/money_parser.h.
#include "tracker/money_parser.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace rangebook {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

MoneyHints hints(std::string_view code, std::optional<char> decimal_sign = std::nullopt) {
  return {Currency::from_code(code), decimal_sign};
}

/// "12.50 EUR", or the name of the problem with its readings.
std::string read(std::string_view text, const MoneyHints& given) {
  const auto result = parse_money(text, given);
  if (const auto* money = std::get_if<Money>(&result)) return to_string(*money);
  constexpr const char* kNames[] = {"no amount",   "ambiguous",    "no currency",
                                    "too precise", "out of range", "negative"};
  const auto& problem = std::get<MoneyProblem>(result);
  std::string name = kNames[static_cast<std::size_t>(problem.kind)];
  for (const auto& reading : problem.readings) name += " " + reading;
  return name;
}

std::string read(std::string_view text, std::string_view code) { return read(text, hints(code)); }

TEST(ParseMoney, PlainDigits) {
  EXPECT_EQ(read("89", "EUR"), "89.00 EUR");
  EXPECT_EQ(read("89.00", "EUR"), "89.00 EUR");
  EXPECT_EQ(read("89,00", "EUR"), "89.00 EUR");
  EXPECT_EQ(read("89,5", "EUR"), "89.50 EUR");
  EXPECT_EQ(read("0", "EUR"), "0.00 EUR");
  EXPECT_EQ(read("8900", "JPY"), "8900 JPY");
  EXPECT_EQ(read("8.25", "KWD"), "8.250 KWD");
  EXPECT_EQ(read(" 89.00\t", "EUR"), "89.00 EUR");
}

TEST(ParseMoney, PlainDigitsGiveTheSameOnBothPaths) {
  for (const auto* text : {"€12.50", "12,5 €", "EUR 12", "12KWD", "€ 1.299", "CLF 12.5", "1", "12",
                           "12.5", "12,50", "12345678.90", "007", "0.05", "123456789012345"}) {
    for (const auto* code : {"EUR", "JPY", "KWD", "CLF"}) {
      EXPECT_EQ(read(text, code), read(std::string(text) + " ", code)) << text << code;
    }
  }
}

// Three digits after one separator are thousands where the currency has two minor digits.
TEST(ParseMoney, ThreeDigitsAfterOneSeparatorAreThousands) {
  EXPECT_EQ(read("1.299", "EUR"), "1299.00 EUR");
  EXPECT_EQ(read("1,299", "EUR"), "1299.00 EUR");
  EXPECT_EQ(read("1,299", "GBP"), "1299.00 GBP");
  EXPECT_EQ(read("1,299", "USD"), "1299.00 USD");
  EXPECT_EQ(read("12.990", "JPY"), "12990 JPY");
  EXPECT_EQ(read("0.500", "EUR"), "0.50 EUR");
  EXPECT_EQ(read("1299.500", "EUR"), "1299.50 EUR");
}

TEST(ParseMoney, ThreeMinorDigitsNeedAHint) {
  EXPECT_EQ(read("1.299", "KWD"), "ambiguous 1.299 1299");
  EXPECT_EQ(read("1.299", hints("KWD", '.')), "1.299 KWD");
  EXPECT_EQ(read("1.299", hints("KWD", ',')), "1299.000 KWD");
  EXPECT_EQ(read("0.500", "KWD"), "0.500 KWD");
  EXPECT_EQ(read("1,299.500", "KWD"), "1299.500 KWD");
}

// Other rows that prove the point to be the decimal sign leave no thousands to "1.299"; no such
// amount exists in euro, so the person decides.
TEST(ParseMoney, DecimalSignOfTheDocumentIsKept) {
  EXPECT_EQ(read("1.299", hints("EUR", ',')), "1299.00 EUR");
  EXPECT_EQ(read("1.299", hints("EUR", '.')), "too precise 1.299 1299");
  EXPECT_EQ(read("49.900", hints("EUR", '.')), "49.90 EUR");
  EXPECT_EQ(read("1.000", hints("JPY", '.')), "ambiguous 1.000 1000");
  EXPECT_EQ(read("12.50", hints("EUR", ',')), "12.50 EUR");
  EXPECT_EQ(read("1.299,00", hints("EUR", '.')), "1299.00 EUR");
}

TEST(ParseMoney, GroupsOfDigits) {
  EXPECT_EQ(read("1.299,00", "EUR"), "1299.00 EUR");
  EXPECT_EQ(read("1'049,95", "CHF"), "1049.95 CHF");
  EXPECT_EQ(read("1’049.95", "CHF"), "1049.95 CHF");
  EXPECT_EQ(read("9 800 Kč", "CZK"), "9800.00 CZK");
  EXPECT_EQ(read("9\u00A0800,50 Kč", "CZK"), "9800.50 CZK");
  EXPECT_EQ(read("129\u202F990 Ft", "HUF"), "129990.00 HUF");
  EXPECT_EQ(read("1,23,456.78", "INR"), "123456.78 INR");
  EXPECT_EQ(read("1.144.000", "COP"), "1144000.00 COP");
  EXPECT_EQ(read("1.299.00", "EUR"), "1299.00 EUR");
  EXPECT_EQ(read("12.345,6", "EUR"), "12345.60 EUR");
}

TEST(ParseMoney, DigitsOfOtherScripts) {
  EXPECT_EQ(read("١٬٢٩٩٫٥٠", "EGP"), "1299.50 EGP");
  EXPECT_EQ(read("８，９００円", "EUR"), "8900 JPY");
  EXPECT_EQ(read("１２．５０", "EUR"), "12.50 EUR");
}

// Common practice, no source.
TEST(ParseMoney, WordsAndMarksOfShops) {
  EXPECT_EQ(read("from £39", "EUR"), "39.00 GBP");
  EXPECT_EQ(read("ab 39,90 €", "EUR"), "39.90 EUR");
  EXPECT_EQ(read("49,- €", "EUR"), "49.00 EUR");
  EXPECT_EQ(read("49,–", "EUR"), "49.00 EUR");
  EXPECT_EQ(read("12€50", "EUR"), "12.50 EUR");
  EXPECT_EQ(read("£39.00 (20% off)", "EUR"), "39.00 GBP");
  EXPECT_EQ(read("34,50 € *", "EUR"), "34.50 EUR");
  EXPECT_EQ(read("Price39.99", "EUR"), "39.99 EUR");
  EXPECT_EQ(read("Pack of 3 £12.00", "EUR"), "12.00 GBP");
}

TEST(ParseMoney, FreeIsZero) {
  EXPECT_EQ(read("Free", "EUR"), "0.00 EUR");
  EXPECT_EQ(read("gratis!", "EUR"), "0.00 EUR");
  EXPECT_EQ(read("Free", MoneyHints{}), "no currency");
  EXPECT_EQ(read("Free delivery", "EUR"), "no amount");
}

TEST(ParseMoney, WordsSayWhichOfTwoPrices) {
  EXPECT_EQ(read("was £50 now £40", "GBP"), "40.00 GBP");
  EXPECT_EQ(read("£40 (was £50)", "GBP"), "40.00 GBP");
  EXPECT_EQ(read("39,90 € statt 59,90 €", "EUR"), "39.90 EUR");
  EXPECT_EQ(read("59,90 EUR 599,00 EUR pro Kilogramm", "EUR"), "59.90 EUR");
  EXPECT_EQ(read("£40 was £30", "GBP"), "ambiguous 40 30");
}

TEST(ParseMoney, TextCurrencyWinsOverTheHint) {
  EXPECT_EQ(read("£54.17", "USD"), "54.17 GBP");
  EXPECT_EQ(read("AED 8000 (USD 2179)", "EUR"), "8000.00 AED");
  EXPECT_EQ(read("EUR price: 39.00", "USD"), "39.00 EUR");
  EXPECT_EQ(read("$ 12 USD", "CAD"), "12.00 USD");
}

TEST(ParseMoney, SharedSignsNeedAHint) {
  EXPECT_EQ(read("$22.00", "AUD"), "22.00 AUD");
  EXPECT_EQ(read("$22.00", "EUR"), "no currency");
  EXPECT_EQ(read("$22.00", MoneyHints{}), "no currency");
  EXPECT_EQ(read("299 kr", "SEK"), "299.00 SEK");
  EXPECT_EQ(read("299 kr", "GBP"), "no currency");
  EXPECT_EQ(read("¥1,299", "JPY"), "1299 JPY");
}

TEST(ParseMoney, WithdrawnCurrenciesAreNotTakenForTheHint) {
  EXPECT_EQ(read("DEM 170 000", "EUR"), "no currency");
  EXPECT_EQ(read("₤1700.", "EUR"), "no currency");
}

// ISO 4217 codes that are words or sizes in a range.
TEST(ParseMoney, CodesThatAreWordsNeedTheHint) {
  EXPECT_EQ(read("TOP 39.00", "EUR"), "no currency");
  EXPECT_EQ(read("TRY 1.299,00", "TRY"), "1299.00 TRY");
  EXPECT_EQ(read("39.00 all", "EUR"), "39.00 EUR");
}

TEST(ParseMoney, MoreDigitsThanTheCurrencyHas) {
  EXPECT_EQ(read("34.992001", "GBP"), "too precise 34.992001");
  EXPECT_EQ(read("34.990000", "GBP"), "34.99 GBP");
  EXPECT_EQ(read("12.50", "JPY"), "too precise 12.50");
  EXPECT_EQ(read("12.00", "JPY"), "12 JPY");
  EXPECT_EQ(read("1,2345", "EUR"), "too precise 1.2345");
}

TEST(ParseMoney, RangeOfTheInteger) {
  EXPECT_EQ(read("92233720368547758.07", "EUR"), "92233720368547758.07 EUR");
  EXPECT_EQ(read("92233720368547758.08", "EUR"), "out of range");
  EXPECT_EQ(read("9223372036854775808", "JPY"), "out of range");
  EXPECT_EQ(read(std::string(400, '9'), "EUR"), "out of range");
  EXPECT_EQ(read(std::string(100000, '9'), "EUR"), "out of range");
  EXPECT_EQ(read("000000000000000000000000000000012.50", "EUR"), "12.50 EUR");
}

TEST(ParseMoney, NegativeAmounts) {
  for (const auto* text : {"-5.00", "£-5", "-£5", "−5,00 €", "- 5.00", "Price: -5.00"}) {
    EXPECT_EQ(read(text, "GBP"), "negative") << text;
  }
  EXPECT_EQ(read("Price - 5.00", "GBP"), "5.00 GBP");
}

TEST(ParseMoney, NoAmount) {
  for (const auto* text : {"", " ", "€", "—", "n/a", "Sold out", "30%", "Save £10", "MX924",
                           "SKU-123", "\xFF\xFE", "100 ml", "\xE2\x82"}) {
    EXPECT_EQ(read(text, "GBP"), "no amount") << text;
  }
}

// Texts where any single amount would be a guess.
TEST(ParseMoney, AmbiguousTextsAreNeverGuessed) {
  for (const auto* text : {"£11.95 - £15.95",
                           "11,95–15,95 €",
                           "£12 - 15",
                           "from £29 to £39",
                           "now £29 - £39",
                           "3,49 € 1,75 €",
                           "£50 £40",
                           "10 / 12 €",
                           "£9.99 + £5.00",
                           "2 for £10",
                           "3x £5",
                           "3 × 5 €",
                           "2 items for £10",
                           "up to £50",
                           "under 50 €",
                           "20% off £50",
                           "£10 off £50",
                           "1250€ 60",
                           "£19 99",
                           "49:90",
                           "10:30",
                           "12.10.2024",
                           "2024-05-01",
                           "1,23.45",
                           "12,34.56",
                           "01.299",
                           "1.2k €",
                           "£1.2m",
                           "3万円",
                           "99p",
                           "50 cents",
                           "19⁹⁹ €",
                           "12½",
                           "39.99each",
                           "399 299 kr",
                           "1 299 15",
                           "(5.00)",
                           "5.00-",
                           "+5.00",
                           "~ 20 €",
                           "> 20 €",
                           "$..75",
                           "5'11",
                           "1.2.3",
                           "10 20 30",
                           "size 12 39.90",
                           "1.299,00.5",
                           ",.5"}) {
    for (const auto* code : {"EUR", "GBP", "SEK"}) {
      EXPECT_THAT(read(text, code), HasSubstr("ambiguous")) << text;
    }
    EXPECT_EQ(parse_amount(text, hints("EUR")), std::nullopt) << text;
  }
}

TEST(ParseMoney, ProblemsQuoteTheTextInValidUtf8) {
  const auto result = parse_money("\xFF\n twelve \x01", hints("EUR"));
  const auto& problem = std::get<MoneyProblem>(result);
  EXPECT_EQ(problem.what, "\"\uFFFD  twelve  \" has no price: give an amount in digits");
  const auto cut = parse_money(std::string(59, 'x') + "€€€€", hints("EUR"));
  EXPECT_EQ(std::get<MoneyProblem>(cut).what.substr(0, 64), "\"" + std::string(59, 'x') + "...\"");
}

TEST(ParseMoney, ReadingsStandInTheOrderOfTheText) {
  const auto result = parse_money("£11.95 - £15.95", hints("GBP"));
  EXPECT_THAT(std::get<MoneyProblem>(result).readings, ElementsAre("11.95", "15.95"));
}

TEST(ParseAmount, IsExactWhateverTheCurrencyHas) {
  EXPECT_EQ(parse_amount("34.992001", hints("GBP")), (DecimalAmount{34992001, 6}));
  EXPECT_EQ(parse_amount("1.299", hints("EUR")), (DecimalAmount{1299, 0}));
  EXPECT_EQ(parse_amount("-5,00 €", {}), (DecimalAmount{-500, 2}));
  EXPECT_EQ(parse_amount("free", {}), (DecimalAmount{0, 0}));
  EXPECT_EQ(parse_amount("none", {}), std::nullopt);
  EXPECT_EQ(parse_amount("99999999999999999999", {}), std::nullopt);
}

std::string found(std::string_view text, std::string_view hint = "") {
  const auto currency = find_currency(text, Currency::from_code(hint));
  return currency ? std::string(currency->code()) : "none";
}

TEST(FindCurrency, SignsNamesAndCodes) {
  EXPECT_EQ(found("12 €"), "EUR");
  EXPECT_EQ(found("Prices in SEK"), "SEK");
  EXPECT_EQ(found("12 zł"), "PLN");
  EXPECT_EQ(found("A$12"), "AUD");
  EXPECT_EQ(found("R$12"), "BRL");
  EXPECT_EQ(found("руб."), "RUB");
  EXPECT_EQ(found("423.923 KD"), "KWD");
  EXPECT_EQ(found("usd"), "USD");
  EXPECT_EQ(found("£", "EGP"), "EGP");
  EXPECT_EQ(found("£"), "GBP");
}

TEST(FindCurrency, SharedSignsAndWords) {
  EXPECT_EQ(found("$12"), "none");
  EXPECT_EQ(found("$12", "CAD"), "CAD");
  EXPECT_EQ(found("12 kr", "DKK"), "DKK");
  EXPECT_EQ(found("12 kr", "EUR"), "none");
  EXPECT_EQ(found("TOP"), "none");
  EXPECT_EQ(found("all sizes"), "none");
  EXPECT_EQ(found("Europe"), "none");
  EXPECT_EQ(found("£12 $15 €13"), "none");
}

TEST(ProvenDecimalSign, OnlyWhenTheTextProvesIt) {
  EXPECT_EQ(proven_decimal_sign("12,50"), ',');
  EXPECT_EQ(proven_decimal_sign("12.5"), '.');
  EXPECT_EQ(proven_decimal_sign("1.299,00"), ',');
  EXPECT_EQ(proven_decimal_sign("1'299.00"), '.');
  EXPECT_EQ(proven_decimal_sign("0.500"), '.');
  EXPECT_EQ(proven_decimal_sign("1299.500"), '.');
  EXPECT_EQ(proven_decimal_sign("£12.50 - £15"), '.');
  for (const auto* text : {"", "12", "1.299", "1,299", "1.299.000", "12.50 12,50", "none"}) {
    EXPECT_EQ(proven_decimal_sign(text), std::nullopt) << text;
  }
}

}  // namespace
}  // namespace rangebook
