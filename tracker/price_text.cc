// Folding of price text to one form per digit, space, dash and apostrophe (Unicode data by ICU).
#include "tracker/price_text.h"

#include <unicode/uchar.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <cstdint>
#include <optional>

namespace rangebook {
namespace {

constexpr std::size_t kMaxQuoted = 60;

icu::UnicodeString decode(std::string_view text) {
  return icu::UnicodeString::fromUTF8(
      icu::StringPiece(text.data(), static_cast<std::int32_t>(text.size())));
}

/// Full-width forms of ASCII (U+FF01 to U+FF5E) and of currency signs in their plain form.
char32_t narrow(char32_t sign) {
  if (sign >= 0xFF01 && sign <= 0xFF5E) return sign - 0xFEE0;
  if (sign == 0xFFE0) return U'¢';
  if (sign == 0xFFE1) return U'£';
  if (sign == 0xFFE5) return U'¥';
  return sign == 0xFFE6 ? U'₩' : sign;
}

bool is_dash(char32_t sign) {
  return (sign >= 0x2010 && sign <= 0x2015) || sign == 0x2212 || sign == 0xFE58 || sign == 0xFE63;
}

bool is_apostrophe(char32_t sign) {
  return sign == 0x2018 || sign == 0x2019 || sign == 0x02BC || sign == 0x00B4 || sign == '`' ||
         sign == 0x2032 || sign == 0x066C;  // the last is the Arabic thousands separator
}

bool is_joining_space(char32_t sign) {
  return sign == kJoiningSpace || sign == 0x202F || (sign >= 0x2006 && sign <= 0x200A);
}

/// The folded form; nothing for a mark that shows nothing (direction, zero width, soft hyphen).
std::optional<char32_t> fold(char32_t raw) {
  const char32_t sign = narrow(raw);
  if (sign < 0x80 && sign > 0x20) return sign == '`' ? U'\'' : sign;
  if (is_joining_space(sign)) return kJoiningSpace;
  const auto code = static_cast<UChar32>(sign);
  if (u_isUWhiteSpace(code) != 0) return U' ';
  if (const auto digit = u_charDigitValue(code); digit >= 0) {
    return U'0' + static_cast<char32_t>(digit);
  }
  if (is_dash(sign)) return U'-';
  if (is_apostrophe(sign)) return U'\'';
  if (sign == 0x00B7) return U'.';  // the raised point of older British prices
  const auto type = u_charType(code);
  if (type == U_FORMAT_CHAR || type == U_CONTROL_CHAR) return std::nullopt;
  return sign;
}

bool is_unspaced_script(char32_t sign) {
  return sign >= 0x2E80 && !(sign >= 0xA640 && sign <= 0xABFF) && sign < 0xFB00;
}

/// A byte inside a UTF-8 sequence: not a place to cut.
bool is_continuation(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) == 0x80; }

}  // namespace

std::u32string fold_price_text(std::string_view utf8) {
  std::u32string folded;
  folded.reserve(utf8.size());
  const icu::UnicodeString text = decode(utf8);
  for (std::int32_t at = 0; at < text.length(); at = text.moveIndex32(at, 1)) {
    if (const auto sign = fold(static_cast<char32_t>(text.char32At(at)))) folded.push_back(*sign);
  }
  return folded;
}

std::string to_utf8(std::u32string_view chars) {
  icu::UnicodeString text;
  for (const char32_t sign : chars) text.append(static_cast<UChar32>(sign));
  std::string utf8;
  return text.toUTF8String(utf8);
}

std::string quoted(std::string_view text) {
  std::size_t length = std::min(text.size(), kMaxQuoted);
  while (length < text.size() && length > 0 && is_continuation(text[length])) --length;
  icu::UnicodeString shown = decode(text.substr(0, length));
  for (std::int32_t at = 0; at < shown.length(); ++at) {
    if (u_iscntrl(shown.charAt(at)) != 0) shown.setCharAt(at, u' ');
  }
  std::string utf8;
  shown.toUTF8String(utf8);
  return "\"" + utf8 + (text.size() > length ? "...\"" : "\"");
}

bool is_digit(char32_t sign) { return sign >= U'0' && sign <= U'9'; }

bool is_space(char32_t sign) { return sign == U' ' || sign == kJoiningSpace; }

bool is_word_char(char32_t sign) {
  if (is_unspaced_script(sign)) return false;
  const auto code = static_cast<UChar32>(sign);
  return u_isalpha(code) != 0 || u_charType(code) == U_NON_SPACING_MARK;
}

bool is_numeral_mark(char32_t sign) {
  constexpr std::u32string_view kNumerals = U"十百千万亿億萬만억천백";
  return u_charType(static_cast<UChar32>(sign)) == U_OTHER_NUMBER ||
         kNumerals.find(sign) != std::u32string_view::npos;
}

char32_t fold_case(char32_t sign) {
  return static_cast<char32_t>(u_foldCase(static_cast<UChar32>(sign), U_FOLD_CASE_DEFAULT));
}

std::u32string fold_case(std::u32string_view chars) {
  std::u32string folded(chars);
  for (char32_t& sign : folded) sign = fold_case(sign);
  return folded;
}

}  // namespace rangebook
