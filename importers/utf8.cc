// UTF-8 validation, sixteen bytes at a time while the text is ASCII.
#include "importers/utf8.h"

#include <algorithm>

#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace rangebook {
namespace {

/// Length of the front that is ASCII without NUL. Sixteen bytes a step where the machine has SSE2.
std::size_t plain_prefix(std::string_view text) {
  std::size_t at = 0;
#if defined(__SSE2__)
  const __m128i zero = _mm_setzero_si128();
  for (; at + 16 <= text.size(); at += 16) {
    const __m128i bytes = _mm_loadu_si128(reinterpret_cast<const __m128i*>(text.data() + at));
    // Signed compare: a byte above 127 is below zero.
    if (_mm_movemask_epi8(_mm_cmpgt_epi8(bytes, zero)) != 0xFFFF) break;
  }
#endif
  while (at < text.size() && text[at] > 0) ++at;
  return at;
}

bool is_continuation(unsigned char byte) { return (byte & 0xC0U) == 0x80U; }

/// Length of the well-formed character at the front, 0 when there is none (RFC 3629, section 4).
std::size_t character_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  if (lead == 0) return 0;
  if (lead < 0x80) return 1;
  const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i) {
    if (!is_continuation(byte(i))) return 0;
  }
  const unsigned char second = byte(1);
  const bool bad = (lead == 0xE0 && second < 0xA0) || (lead == 0xED && second > 0x9F) ||
                   (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second > 0x8F);
  return bad ? 0 : length;
}

}  // namespace

std::optional<std::size_t> first_bad_byte(std::string_view text) {
  std::size_t at = 0;
  while (true) {
    at += plain_prefix(text.substr(at));
    if (at == text.size()) return std::nullopt;
    const std::size_t length = character_length(text.substr(at));
    if (length == 0) return at;
    at += length;
  }
}

bool is_plain_ascii(std::string_view text) { return plain_prefix(text) == text.size(); }

std::string excerpt_of(std::string_view text, std::size_t max_bytes) {
  std::size_t end = std::min(text.size(), max_bytes);
  while (end > 0 && end < text.size() && is_continuation(static_cast<unsigned char>(text[end]))) {
    --end;
  }
  return std::string(text.substr(0, end));
}

}  // namespace rangebook
