// The text of one price cell, folded so that the readers of numbers and currency signs meet one
// form of each digit, space, dash and apostrophe.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace rangebook {

/// Longer text is not a price; it is refused before any work is done.
inline constexpr std::size_t kMaxPriceBytes = 512;

/// A space that no text breaks at: shops group digits with it, and never part two prices with it.
inline constexpr char32_t kJoiningSpace = U'\u00A0';
/// The Arabic decimal separator, which is never anything else.
inline constexpr char32_t kArabicDecimal = U'\u066B';

/// Code points of `utf8`, folded: decimal digits of every script and full-width forms become ASCII;
/// dashes and the minus become '-'; apostrophes `'`; joining and thin spaces kJoiningSpace; other
/// white space ' '; invisible marks are dropped; invalid bytes become U+FFFD. Case is kept.
std::u32string fold_price_text(std::string_view utf8);

/// UTF-8 of folded code points.
std::string to_utf8(std::u32string_view chars);

/// `text` in quotes for a message: valid UTF-8, no control characters, shortened when long.
std::string quoted(std::string_view text);

bool is_digit(char32_t sign);
bool is_space(char32_t sign);
/// A letter (or a mark on one) of a script that parts words by spaces; Han, kana and Hangul are
/// not, since a currency sign may stand between them without a space.
bool is_word_char(char32_t sign);

/// A superscript, a fraction or a Han or Hangul numeral: changes the value of the digits beside it.
bool is_numeral_mark(char32_t sign);

/// Simple case folding without a locale.
char32_t fold_case(char32_t sign);
std::u32string fold_case(std::u32string_view chars);

}  // namespace rangebook
