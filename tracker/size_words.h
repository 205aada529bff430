// The words and signs of size labels: the tokens a label is cut into, and what words mean.
// All words are common practice, no source; other languages from memory.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "schema/size.h"

namespace rangebook {

inline constexpr std::size_t kMaxSizeTokens = 12;

/// A number, a run of letters, or a sign of a folded label. `W30` is two tokens.
struct SizeToken {
  enum class Type : std::uint8_t { number, word, sign };
  Type type = Type::sign;
  std::string_view text;
  int tenths = 0;  ///< of a number: 38.5 is 385, `00` is -10, `000` is -20

  bool is_word(std::string_view wanted) const { return type == Type::word && text == wanted; }
  bool is_sign(char wanted) const { return type == Type::sign && text.front() == wanted; }
};

/// The tokens of a folded label (see fold_text); nothing when there are too many, or a number has
/// more than one decimal or four digits.
std::optional<std::vector<SizeToken>> size_tokens(std::string_view folded);

/// `uk`, `eur`, `usa`, ..
std::optional<SizeSystem> system_word(std::string_view word);
/// `petite`, `tall`, `long`, `curve`, ..
std::optional<FitRange> fit_word(std::string_view word);
/// One letter behind a number: P, T, L, S, R.
std::optional<FitRange> fit_letter(std::string_view word);
/// `size`, `gr`, `taille`, ..: words that only announce a size.
bool is_size_word(std::string_view word);
/// `One size`, `O/S`, `Taille unique`, ..; the label folded.
bool is_one_size(std::string_view folded);

struct AlphaSize {
  int rank = 0;  ///< M is 0, L 10, XL 20, 2XL and XXL 30; 1X is 10 in its own fit range
  FitRange fit = FitRange::regular;
};
/// `XXL`, `2XL`, `X-Large`, `extra small`, `LT`, `1X`.
std::optional<AlphaSize> alpha_size(std::span<const SizeToken> tokens);

/// Place of a bra cup in its alphabet: AA, A, B, .. with DD between D and E.
std::optional<int> cup_rank(std::string_view word);

}  // namespace rangebook
