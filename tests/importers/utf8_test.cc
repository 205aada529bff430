// UTF-8 by RFC 3629: its own table of well-formed sequences, and what lies just outside it.
#include "importers/utf8.h"

#include <gtest/gtest.h>

namespace rangebook {
namespace {

TEST(Utf8, WellFormedTextIsClean) {
  for (const char* text : {"", "plain", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF",
                           "\xEE\x80\x80", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"}) {
    EXPECT_EQ(first_bad_byte(text), std::nullopt) << text;
  }
}

// RFC 3629, section 3 and 10: overlong forms, surrogates, above U+10FFFF, stray continuations.
TEST(Utf8, IllFormedTextIsFound) {
  for (const char* bad :
       {"\x80", "\xC0\x80", "\xC1\xBF", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xF0\x8F\xBF\xBF",
        "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xC3", "\xE2\x82", "\xFF"}) {
    EXPECT_EQ(first_bad_byte(std::string("0123456789") + bad), 10U) << bad;
  }
}

TEST(Utf8, NulIsBad) {
  EXPECT_EQ(first_bad_byte(std::string_view("abc\0def", 7)), 3U);
  EXPECT_FALSE(is_plain_ascii(std::string_view("12345678\0", 9)));
  EXPECT_TRUE(is_plain_ascii("12345678901234567"));
}

TEST(Utf8, ExcerptsAreCutBetweenCharacters) {
  EXPECT_EQ(excerpt_of("caf\xC3\xA9s", 4), "caf");
  EXPECT_EQ(excerpt_of("caf\xC3\xA9s", 5), "caf\xC3\xA9");
  EXPECT_EQ(excerpt_of("cafe", 9), "cafe");
}

}  // namespace
}  // namespace rangebook
