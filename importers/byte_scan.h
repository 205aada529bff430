// Finding one of a few signs in a run of bytes: the inner loop of reading CSV.
#pragma once

#include <bit>
#include <cstdint>

#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace rangebook {

/// The first of three byte values in [from, to), or `to`.
inline const char* find_any_of(const char* from, const char* to, char a, char b, char c) {
#if defined(__SSE2__)
  const __m128i wanted_a = _mm_set1_epi8(a);
  const __m128i wanted_b = _mm_set1_epi8(b);
  const __m128i wanted_c = _mm_set1_epi8(c);
  for (; to - from >= 16; from += 16) {
    const __m128i bytes = _mm_loadu_si128(reinterpret_cast<const __m128i*>(from));
    const __m128i hits =
        _mm_or_si128(_mm_or_si128(_mm_cmpeq_epi8(bytes, wanted_a), _mm_cmpeq_epi8(bytes, wanted_b)),
                     _mm_cmpeq_epi8(bytes, wanted_c));
    const auto mask = static_cast<std::uint32_t>(_mm_movemask_epi8(hits));
    if (mask != 0) return from + std::countr_zero(mask);
  }
#endif
  while (from != to && *from != a && *from != b && *from != c) ++from;
  return from;
}

}  // namespace rangebook
