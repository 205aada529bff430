// ASCII is folded by hand, since most cells are ASCII; the rest goes through ICU's NFKD form.
#include "tracker/text_fold.h"

#include <unicode/normalizer2.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include "schema/error.h"

namespace rangebook {
namespace {

/// Letters and signs that NFKD leaves alone but a reader takes for ASCII.
constexpr std::array<std::pair<char32_t, std::string_view>, 23> kLookAlikes{{
    {0xD7, "x"},   {0xE6, "ae"},   {0xF0, "d"},    {0xF8, "o"},   {0xFE, "th"},   {0x111, "d"},
    {0x131, "i"},  {0x142, "l"},   {0x153, "oe"},  {0x2010, "-"}, {0x2011, "-"},  {0x2012, "-"},
    {0x2013, "-"}, {0x2014, "-"},  {0x2015, "-"},  {0x2018, "'"}, {0x2019, "'"},  {0x2044, "/"},
    {0x2212, "-"}, {0x201C, "\""}, {0x201D, "\""}, {0x2032, "'"}, {0x2033, "\""},
}};

constexpr std::string_view kNoBreakSpace = "\xC2\xA0";

char fold_ascii(char c) {
  if (c >= 'A' && c <= 'Z') return static_cast<char>(c - 'A' + 'a');
  return c == '\t' || c == '\n' || c == '\r' ? ' ' : c;
}

void append_folded(icu::UnicodeString& out, UChar32 point) {
  const auto found = std::find_if(kLookAlikes.begin(), kLookAlikes.end(), [&](const auto& entry) {
    return entry.first == static_cast<char32_t>(point);
  });
  if (found != kLookAlikes.end()) {
    out.append(icu::UnicodeString::fromUTF8(std::string(found->second)));
  } else if (u_charType(point) != U_NON_SPACING_MARK) {
    out.append(u_isUWhiteSpace(point) ? UChar32{' '} : point);
  }
}

std::string fold_unicode(std::string_view text) {
  UErrorCode status = U_ZERO_ERROR;
  const auto* form = icu::Normalizer2::getNFKDInstance(status);
  auto wide = icu::UnicodeString::fromUTF8({text.data(), static_cast<std::int32_t>(text.size())});
  wide.findAndReplace(icu::UnicodeString(UChar32{0xBD}), icu::UnicodeString::fromUTF8(" 1/2"));
  // Twice: what stands for a letter may be taken apart into a capital (Unicode 15, D146).
  auto plain = wide;
  for (int round = 0; round < 2 && U_SUCCESS(status); ++round) {
    plain = form->normalize(plain.foldCase(), status);
  }
  if (U_FAILURE(status)) throw Error("the Unicode data of this machine cannot be read");
  icu::UnicodeString folded;
  for (std::int32_t i = 0; i < plain.length(); i = plain.moveIndex32(i, 1)) {
    append_folded(folded, plain.char32At(i));
  }
  std::string out;
  folded.toUTF8String(out);
  return out;
}

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

}  // namespace

std::string fold_text(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    if (static_cast<unsigned char>(c) >= 0x80) return fold_unicode(text);
    out.push_back(fold_ascii(c));
  }
  return out;
}

std::string_view trim_text(std::string_view text) {
  for (;;) {
    if (!text.empty() && is_space(text.front())) {
      text.remove_prefix(1);
    } else if (!text.empty() && is_space(text.back())) {
      text.remove_suffix(1);
    } else if (text.starts_with(kNoBreakSpace)) {
      text.remove_prefix(kNoBreakSpace.size());
    } else if (text.ends_with(kNoBreakSpace)) {
      text.remove_suffix(kNoBreakSpace.size());
    } else {
      return text;
    }
  }
}

}  // namespace rangebook
