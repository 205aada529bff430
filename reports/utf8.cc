// Well-formed byte sequences by table 3-7 of the Unicode Standard.
#include "reports/utf8.h"

namespace rangebook {
namespace {

/// What may follow a lead byte: the length of the sequence and the range of its second byte.
struct Lead {
  std::size_t length = 0;  // 0: not a lead byte
  unsigned char low = 0x80;
  unsigned char high = 0xBF;
};

Lead lead_of(unsigned char byte) {
  if (byte < 0x80) return {1, 0, 0};
  if (byte >= 0xC2 && byte <= 0xDF) return {2, 0x80, 0xBF};
  if (byte == 0xE0) return {3, 0xA0, 0xBF};
  if (byte == 0xED) return {3, 0x80, 0x9F};  // no surrogates
  if (byte >= 0xE1 && byte <= 0xEF) return {3, 0x80, 0xBF};
  if (byte == 0xF0) return {4, 0x90, 0xBF};
  if (byte >= 0xF1 && byte <= 0xF3) return {4, 0x80, 0xBF};
  if (byte == 0xF4) return {4, 0x80, 0x8F};  // nothing above U+10FFFF
  return {};
}

}  // namespace

Utf8Step utf8_step(std::string_view text) {
  const Lead lead = lead_of(static_cast<unsigned char>(text.front()));
  if (lead.length == 0) return {1, false};
  for (std::size_t i = 1; i < lead.length; ++i) {
    const auto byte = i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
    const auto low = i == 1 ? lead.low : 0x80U;
    const auto high = i == 1 ? lead.high : 0xBFU;
    if (byte < low || byte > high) return {i, false};
  }
  return {lead.length, true};
}

}  // namespace rangebook
