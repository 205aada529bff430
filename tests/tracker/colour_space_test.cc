// CIELAB and CIEDE2000 against values worked out elsewhere.
#include "tracker/colour_space.h"

#include <gtest/gtest.h>

#include <charconv>
#include <cmath>
#include <string>

#include "tests/check_rows.h"

namespace rangebook {
namespace {

double number(const std::string& text) {
  double value = NAN;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

std::uint8_t hex_byte(const std::string& hex, std::size_t at) {
  int value = 0;
  std::from_chars(hex.data() + at, hex.data() + at + 2, value, 16);
  return static_cast<std::uint8_t>(value);
}

// tests/checks/css-lab-d65.tsv: the CSS named colours by npm culori 4.0.2. Its white point has more
// digits, hence the tolerance.
TEST(LabOf, AgreesWithAnotherLibrary) {
  for (const auto& row : check_rows("css-lab-d65.tsv")) {
    const auto& hex = row.at(1);
    const Lab lab = lab_of({hex_byte(hex, 1), hex_byte(hex, 3), hex_byte(hex, 5)});
    EXPECT_NEAR(lab.lightness, number(row.at(2)), 0.02) << row[0];
    EXPECT_NEAR(lab.a, number(row.at(3)), 0.02) << row[0];
    EXPECT_NEAR(lab.b, number(row.at(4)), 0.02) << row[0];
  }
}

TEST(LabOf, GreysHaveNoChroma) {
  for (int grey = 0; grey < 256; ++grey) {
    const auto channel = static_cast<std::uint8_t>(grey);
    EXPECT_NEAR(lch_of(lab_of({channel, channel, channel})).chroma, 0, 1e-9) << grey;
  }
  EXPECT_NEAR(lab_of({255, 255, 255}).lightness, 100, 1e-9);
  EXPECT_NEAR(lab_of({0, 0, 0}).lightness, 0, 1e-9);
}

// The 34 pairs of Sharma, Wu & Dalal 2005, table 1 (tests/checks/ciede2000-sharma.tsv), to the four
// decimals printed there.
TEST(Ciede2000, PublishedPairs) {
  int pairs = 0;
  for (const auto& row : check_rows("ciede2000-sharma.tsv")) {
    const Lab one{number(row.at(0)), number(row.at(1)), number(row.at(2))};
    const Lab other{number(row.at(3)), number(row.at(4)), number(row.at(5))};
    EXPECT_NEAR(ciede2000(one, other), number(row.at(6)), 0.00005) << row[1] << " " << row[2];
    EXPECT_NEAR(ciede2000(other, one), number(row.at(6)), 0.00005) << "the other way round";
    EXPECT_EQ(ciede2000(one, one), 0);
    ++pairs;
  }
  EXPECT_EQ(pairs, 34);
}

}  // namespace
}  // namespace rangebook
