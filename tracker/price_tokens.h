// Price text cut into numbers, currency signs, known words and marks.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "tracker/currency_signs.h"

namespace rangebook {

/// What a word beside a number says of it (schema/tables/price_words.tsv names them).
enum class WordRole : std::uint8_t {
  none,
  was,
  now,
  saving,
  off,
  per,
  joins,
  limit,
  scale,
  measure,
  free,
  label,
};

enum class TokenKind : std::uint8_t { number, sign, word, mark };

struct PriceToken {
  TokenKind kind = TokenKind::mark;
  std::size_t begin = 0;
  std::size_t end = 0;
  bool spaced = true;              ///< white space or the beginning of the text before it
  SignMatch sign;                  ///< of a sign
  WordRole role = WordRole::none;  ///< of a word
};

/// The tokens of folded text, in order. Every character is in one token or is white space.
std::vector<PriceToken> price_tokens(std::u32string_view chars);

}  // namespace rangebook
