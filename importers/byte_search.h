// Finding the next byte of a small set. Inline, because on an HTML page the next hit is some thirty
// bytes away and a call of memchr costs more than the search.
#pragma once

#include <bit>
#include <cstdint>
#include <string_view>
#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace rangebook {

/// The first of `Wanted` in [at, end), or `end`. Sixteen bytes a step where the machine has SSE2
/// (every x86-64 does), else one.
template <char... Wanted>
inline const char* find_any(const char* at, const char* end) {
#if defined(__SSE2__)
  while (end - at >= 16) {
    const __m128i bytes = _mm_loadu_si128(reinterpret_cast<const __m128i*>(at));
    __m128i hits = _mm_setzero_si128();
    ((hits = _mm_or_si128(hits, _mm_cmpeq_epi8(bytes, _mm_set1_epi8(Wanted)))), ...);
    const auto mask = static_cast<std::uint32_t>(_mm_movemask_epi8(hits));
    if (mask != 0) return at + std::countr_zero(mask);
    at += 16;
  }
#endif
  while (at != end && ((*at != Wanted) && ...)) ++at;
  return at;
}

/// The first place in [at, end) where one of two pairs of bytes stands, or `end`. For words that
/// have a rare pair in them; both are looked for in one pass.
template <char A1, char A2, char B1, char B2>
inline const char* find_pair(const char* at, const char* end) {
#if defined(__SSE2__)
  while (end - at >= 17) {
    const __m128i here = _mm_loadu_si128(reinterpret_cast<const __m128i*>(at));
    const __m128i next = _mm_loadu_si128(reinterpret_cast<const __m128i*>(at + 1));
    const __m128i a = _mm_and_si128(_mm_cmpeq_epi8(here, _mm_set1_epi8(A1)),
                                    _mm_cmpeq_epi8(next, _mm_set1_epi8(A2)));
    const __m128i b = _mm_and_si128(_mm_cmpeq_epi8(here, _mm_set1_epi8(B1)),
                                    _mm_cmpeq_epi8(next, _mm_set1_epi8(B2)));
    const auto mask = static_cast<std::uint32_t>(_mm_movemask_epi8(_mm_or_si128(a, b)));
    if (mask != 0) return at + std::countr_zero(mask);
    at += 16;
  }
#endif
  for (; end - at >= 2; ++at) {
    if ((at[0] == A1 && at[1] == A2) || (at[0] == B1 && at[1] == B2)) return at;
  }
  return end;
}

/// ASCII letters only; never asks a locale.
constexpr bool is_ascii_letter(char c) {
  return static_cast<unsigned char>((static_cast<unsigned char>(c) | 0x20U) - 'a') < 26;
}
constexpr bool is_ascii_digit(char c) { return c >= '0' && c <= '9'; }
/// White space as HTML defines it.
constexpr bool is_html_space(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r' || c == '\f';
}
constexpr char ascii_lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c;
}

/// Without the spaces and tabs at both ends, which mean nothing in a cell typed by hand.
constexpr std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

}  // namespace rangebook
