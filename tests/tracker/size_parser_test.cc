// Size sets and their meaning. Facts of the trade are common practice, no source, unless a check
// names one.
#include "tracker/size_parser.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include "tests/check_rows.h"

namespace rangebook {
namespace {

using System = SizeSystem;
using Labels = std::vector<std::string>;

std::vector<Size> read(const Labels& labels, System shop = System::uk) {
  return interpret_sizes(labels, shop);
}
Size one(const std::string& label, System shop = System::uk) { return read({label}, shop).front(); }

void expect_system(const Labels& labels, System shop, System wanted) {
  for (const auto& size : read(labels, shop)) {
    EXPECT_EQ(to_string(size.system), to_string(wanted)) << size.label;
  }
}

TEST(InterpretSizes, BareNumbersFollowTheShop) {
  expect_system({"8", "10", "12"}, System::uk, System::uk);
  expect_system({"8", "10", "12"}, System::au, System::au);
  expect_system({"00", "0", "2", "14"}, System::us, System::us);
  expect_system({"34", "36", "44"}, System::eu, System::eu);
  expect_system({"36", "38"}, System::fr, System::fr);
  expect_system({"38", "40", "42"}, System::it, System::it);
  expect_system({"5", "7", "9"}, System::jp, System::jp);
  expect_system({"36", "37", "38"}, System::footwear_eu, System::footwear_eu);
}

TEST(InterpretSizes, MarksDecideOverTheShop) {
  EXPECT_EQ(one("EU 38").system, System::eu);
  EXPECT_EQ(one("FR38").system, System::fr);
  EXPECT_EQ(one("12 (UK)", System::eu).system, System::uk);
  EXPECT_EQ(one("US 8").system, System::us);
  EXPECT_EQ(one("Size 12").system, System::uk);
  EXPECT_EQ(one("Gr. 38", System::eu).system, System::eu);
}

TEST(InterpretSizes, OneSizeNamedInSeveralSystemsIsTheShopsOwn) {
  EXPECT_EQ(one("UK 12 / EU 40").system, System::uk);
  EXPECT_EQ(one("UK 12 / EU 40", System::eu).low, 400);
  EXPECT_EQ(one("UK 12 (EU 40)", System::eu).system, System::eu);
}

TEST(InterpretSizes, FitRanges) {
  for (const auto* label : {"12 Petite", "12P", "P12", "Petite 12", "12 petite", "UK 12 Petite",
                            "12-P", "12 (Petite)", "12S"}) {
    EXPECT_EQ(one(label).fit, FitRange::petite) << label;
    EXPECT_EQ(one(label).low, 120) << label;
    EXPECT_EQ(one(label).system, System::uk) << label;
  }
  for (const auto* label : {"12L", "12 Long", "12 Tall", "12T", "UK 12 Long"}) {
    EXPECT_EQ(one(label).fit, FitRange::tall) << label;
  }
  EXPECT_EQ(one("12R").fit, FitRange::regular);
  EXPECT_EQ(one("18 Plus").fit, FitRange::plus);
  EXPECT_EQ(one("12 Maternity").fit, FitRange::maternity);
  EXPECT_EQ(one("XLT").fit, FitRange::tall);
  EXPECT_EQ(one("MP").fit, FitRange::petite);
  EXPECT_FALSE(one("12 Petite Tall").ranked());
}

TEST(InterpretSizes, PlusSizes) {
  EXPECT_EQ(one("14W").system, System::us);
  EXPECT_EQ(one("14W").fit, FitRange::plus);
  EXPECT_EQ(one("1X").system, System::alpha);
  EXPECT_EQ(one("1X").fit, FitRange::plus);
  EXPECT_LT(one("1X").low, one("3X").low);
}

TEST(InterpretSizes, LettersRank) {
  const Labels ascending{"XXXS", "XXS", "XS",  "S",   "M",   "L",
                         "XL",   "XXL", "3XL", "4XL", "5XL", "6XL"};
  const auto sizes = read(ascending);
  for (std::size_t i = 1; i < sizes.size(); ++i) {
    EXPECT_LT(sizes[i - 1].low, sizes[i].low) << sizes[i].label;
    EXPECT_TRUE(size_less(sizes[i - 1], sizes[i]));
  }
  EXPECT_EQ(one("2XL").low, one("XXL").low);
  EXPECT_EQ(one("XXXL").low, one("3XL").low);
  EXPECT_EQ(one("X-Large").low, one("XL").low);
  EXPECT_EQ(one("Extra Small").low, one("xs").low);
  EXPECT_EQ(one("2X-Large").low, one("XXL").low);
  EXPECT_EQ(one("Medium").low, one("M").low);
}

TEST(InterpretSizes, DualSizesCarryTheSpan) {
  EXPECT_EQ(one("S/M").low, one("S").low);
  EXPECT_EQ(one("S/M").high, one("M").low);
  EXPECT_EQ(one("12-14").low, 120);
  EXPECT_EQ(one("12-14").high, 140);
  EXPECT_EQ(one("12/14").high, 140);
  EXPECT_EQ(one("36/38", System::eu).high, 380);
  EXPECT_EQ(one("T36/T38", System::fr).low, 360);
  EXPECT_EQ(one("T36/T38", System::fr).high, 380);
  EXPECT_EQ(one("XL/2XL").high, one("2XL").low);
  EXPECT_EQ(one("12P-14P").fit, FitRange::petite);
  EXPECT_EQ(one("L (14-16)").low, one("L").low);
}

TEST(InterpretSizes, WaistAndLength) {
  for (const auto* label : {"W30 L32", "W30/L32", "30W 32L", "30x32", "W30L32", "30 x 32",
                            "30\"/32\"", "30/32", "W30 x L32", "30 waist 32 leg"}) {
    const auto size = one(label);
    EXPECT_EQ(size.system, System::waist_length) << label;
    EXPECT_EQ(size.low, one("W30 L32").low) << label;
    EXPECT_EQ(size.low, size.high) << label;
  }
  EXPECT_LT(one("W28").low, one("W28 L30").low);
  EXPECT_LT(one("W28 L30").low, one("W28 L32").low);
  EXPECT_LT(one("W28 L36").low, one("W29 L30").low);
  EXPECT_LT(one("W28").low, one("W29").low);
  EXPECT_EQ(one("28\"").system, System::waist_length);
}

TEST(InterpretSizes, TheSetTellsSlashPairsApart) {
  expect_system({"30/30", "30/32", "32/32"}, System::eu, System::waist_length);
  expect_system({"30/32", "32/34"}, System::uk, System::waist_length);
  expect_system({"32/34", "36/38", "40/42"}, System::eu, System::eu);
  expect_system({"8/10", "12/14"}, System::uk, System::uk);
}

TEST(InterpretSizes, Bras) {
  EXPECT_EQ(one("34DD").system, System::bra);
  EXPECT_EQ(one("34 DD").system, System::bra);
  EXPECT_EQ(one("12DD", System::au).system, System::bra_au);
  const auto sizes = read({"34AA", "34A", "34B", "34D", "34DD", "34E", "34F", "34FF", "36A"});
  for (std::size_t i = 1; i < sizes.size(); ++i)
    EXPECT_TRUE(size_less(sizes[i - 1], sizes[i])) << i;
}

// Labels of the worked examples to EN 13402 (tests/checks/bra-sizes.tsv).
TEST(InterpretSizes, BrasOfTheEuropeanStandard) {
  for (const auto& row : check_rows("bra-sizes.tsv")) {
    const auto label = row.at(2);
    const auto size = one(label);
    EXPECT_EQ(size.system, System::bra_eu) << label;
    EXPECT_LT(one(std::to_string(std::stoi(label) - 5) + "K").low, size.low) << label;
    EXPECT_GT(one(std::to_string(std::stoi(label) + 5) + "AA").low, size.low) << label;
  }
}

TEST(InterpretSizes, OneSize) {
  for (const auto* label : {"One size", "OS", "O/S", "one-size", "ONESIZE", "Taille unique",
                            "Einheitsgr\xC3\xB6\xC3\x9F"
                            "e",
                            "TU"}) {
    EXPECT_EQ(one(label).system, System::one_size) << label;
  }
}

TEST(InterpretSizes, ShoesAndWaistsInAGarmentShop) {
  expect_system({"36", "37", "38", "39"}, System::uk, System::footwear_eu);
  expect_system({"36", "37", "38", "39"}, System::eu, System::footwear_eu);
  expect_system({"38.5"}, System::uk, System::footwear_eu);
  expect_system({"38,5"}, System::eu, System::footwear_eu);
  expect_system({"38\xC2\xBD"}, System::eu, System::footwear_eu);
  expect_system({"3", "4", "5", "6"}, System::uk, System::footwear_uk);
  expect_system({"EU 36", "EU 37", "EU 38"}, System::uk, System::footwear_eu);
  expect_system({"25", "26", "27", "28"}, System::uk, System::waist_length);
}

TEST(InterpretSizes, WithoutADefaultOnlyTheUnmistakableIsNamed) {
  expect_system({"8", "10", "12"}, System::unknown, System::unknown);
  expect_system({"36", "38", "40"}, System::unknown, System::unknown);
  expect_system({"0", "2", "4"}, System::unknown, System::us);
  expect_system({"32", "34", "36", "38", "48"}, System::unknown, System::eu);
  expect_system({"S", "M"}, System::unknown, System::alpha);
}

TEST(InterpretSizes, NothingIsRankedOnAGuess) {
  expect_system({"36", "38", "40", "42"}, System::uk, System::unknown);
  expect_system({"8", "10", "13", "16"}, System::uk, System::unknown);
  expect_system({"Tea length", "P", "made to measure", "999"}, System::uk, System::unknown);
  expect_system({"16", "18", "38", "40"}, System::uk, System::uk);
  EXPECT_EQ(one("Tea length").low, 0);
}

// Found by fuzzing: the word "n" was once taken for a number.
TEST(InterpretSizes, ALoneLetterIsNoNumber) {
  expect_system({"n-\"", "n", "n/n", "wn"}, System::uk, System::unknown);
}

TEST(InterpretSizes, OrderAndLabelsAreKept) {
  const Labels labels{" 12", "8", "Oddly", "8"};
  const auto sizes = read(labels);
  ASSERT_EQ(sizes.size(), labels.size());
  for (std::size_t i = 0; i < labels.size(); ++i) EXPECT_EQ(sizes[i].label, labels[i]);
}

// The order is total and does not depend on the order of the input.
TEST(SizeLess, SortsAnyOrderAlike) {
  Labels labels{"8",   "10",   "12",  "12-14", "S",     "S/M", "M",  "W30 L32", "W30 L34",
                "34D", "34DD", "12P", "Odd",   "Other", "OS",  "1X", "38.5"};
  auto sizes = read(labels);
  std::sort(sizes.begin(), sizes.end(), size_less);
  std::mt19937 random(7);
  for (int round = 0; round < 50; ++round) {
    auto shuffled = sizes;
    std::shuffle(shuffled.begin(), shuffled.end(), random);
    std::sort(shuffled.begin(), shuffled.end(), size_less);
    EXPECT_EQ(shuffled, sizes);
  }
}

}  // namespace
}  // namespace rangebook
