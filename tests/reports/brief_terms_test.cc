// Amounts in terms; the forms of an amount are those of wording_test and number_style_test.
#include "reports/brief_terms.h"

#include <gtest/gtest.h>

#include "reports/number_style.h"

namespace rangebook {
namespace {

std::string said(std::string_view text, const NumberStyle& numbers = {}) {
  Phrase phrase = terms_value_phrase(text);
  restyle(phrase, numbers);
  return plain_text(phrase, false);
}

TEST(BriefTerms, AnAmountIsWrittenAsAmountsAre) {
  EXPECT_EQ(said("60.00 GBP"), "£60.00");
  EXPECT_EQ(said("1200 JPY"), "1200 JPY");  // others use the sign, too
  EXPECT_EQ(said("60.00 EUR", NumberStyle::of("de-DE").value()), "60,00\xC2\xA0€");
}

TEST(BriefTerms, WhatIsNoAmountStaysAsItIs) {
  for (const char* text : {"28 days from delivery", "shop", "GB, IE", "3-5 working days", "60 GBP",
                           "60.00", "not stated", ""}) {
    EXPECT_EQ(said(text), text);
  }
}

}  // namespace
}  // namespace rangebook
