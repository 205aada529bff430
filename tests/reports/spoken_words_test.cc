// Figures as they are said. The numbers themselves are spelled by ICU's rules for British English
// (Unicode CLDR, rule-based number formats); which figure is said how is common practice, no
// source.
#include "reports/spoken_words.h"

#include <gtest/gtest.h>

#include <vector>

namespace rangebook {
namespace {

TEST(SpokenWords, FiguresOfReports) {
  const std::vector<std::pair<const char*, const char*>> cases{
      {"£79.90", "seventy-nine pounds ninety"},
      {"€1.00", "one euro"},
      {"£0.90", "ninety pence"},
      {"£0.01", "one penny"},
      {"€35.05", "thirty-five euros and five cents"},
      {"-£10.00", "minus ten pounds"},
      {"+€12.50", "plus twelve euros fifty"},
      {"£0.00", "zero pounds"},
      {"79.90 SEK", "seventy-nine point nine zero Swedish kronor"},
      {"1200 JPY", "one thousand two hundred Japanese yen"},
      {"12.5%", "twelve point five per cent"},
      {"25.0%", "twenty-five per cent"},
      {"-0.4%", "minus zero point four per cent"},
      {"1.0312", "one point zero three one two"},
      {"4 of 24", "four of twenty-four"},
      {"9 lines", "nine lines"},
      {"UK 6–24", "UK six to twenty-four"},
      {"UK 8, 12, 14", "UK eight, twelve, fourteen"},
      {"petite UK 8–12", "petite UK eight to twelve"},
      {"S–XL", "S to XL"},
      {"4 of 24 (95%: 7–36%)",
       "four of twenty-four (ninety-five per cent: seven to thirty-six per cent)"},
      {"2 September 2026", "the second of September twenty twenty-six"},
      {"28 days from delivery", "twenty-eight days from delivery"},
      {"up 3.1%", "up three point one per cent"},
      {"AW26", "AW26"},
      {"18W", "18W"},
      {"", ""},
      {"99999999999999999999", "99999999999999999999"},
  };
  for (const auto& [written, said] : cases) EXPECT_EQ(spoken_words(written), said) << written;
}

}  // namespace
}  // namespace rangebook
