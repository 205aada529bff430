// Well-formed UTF-8, byte by byte (Unicode, table 3-7).
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

namespace rangebook {

/// The bytes of the code point that `text` begins with, 1 to 4; 0 when it begins with none.
constexpr std::size_t utf8_sequence(std::string_view text) {
  if (text.empty()) return 0;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(0);
  if (lead < 0x80) return 1;
  const std::size_t size = lead < 0xC2   ? 0
                           : lead < 0xE0 ? 2
                           : lead < 0xF0 ? 3
                           : lead < 0xF5 ? 4
                                         : 0;
  if (size == 0 || text.size() < size) return 0;
  const unsigned low = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
  const unsigned high = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
  if (byte(1) < low || byte(1) > high) return 0;
  for (std::size_t i = 2; i < size; ++i) {
    if ((byte(i) & 0xC0U) != 0x80) return 0;
  }
  return size;
}

/// The length of the longest well-formed beginning; equal to the size when all is well.
inline std::size_t utf8_prefix(std::string_view text) {
  constexpr std::uint64_t kHighBits = 0x8080808080808080U;
  std::size_t at = 0;
  while (at < text.size()) {
    std::uint64_t word = kHighBits;
    if (text.size() - at >= sizeof word) std::memcpy(&word, text.data() + at, sizeof word);
    if ((word & kHighBits) == 0) {
      at += sizeof word;
      continue;
    }
    const std::size_t size = utf8_sequence(text.substr(at, 4));
    if (size == 0) break;
    at += size;
  }
  return at;
}

/// The text with U+FFFD for each byte that is not UTF-8.
inline std::string well_formed(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t good = utf8_prefix(text);
    out.append(text.substr(0, good));
    text.remove_prefix(good);
    if (text.empty()) break;
    out += "\xEF\xBF\xBD";
    text.remove_prefix(1);
  }
  return out;
}

}  // namespace rangebook
