// Signs, abbreviations, names and codes of currencies as they stand in price text
// (schema/tables/currency_signs.tsv and the codes of ISO 4217).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "schema/money.h"

namespace rangebook {

/// How much a sign says; the words of the table's `use` column.
enum class SignUse : std::uint8_t {
  own,     ///< one currency only
  usual,   ///< the first currency, unless the hint is another of them
  shared,  ///< one of several; the hint has to say which
  word,    ///< an ISO code that is also a word or a size; the hint has to say it is meant
  past,    ///< a withdrawn currency: known, but not of the ISO 4217 list
};

/// A sign found in folded text.
struct SignMatch {
  std::size_t length = 0;  ///< code points, with the full stop of an abbreviation
  SignUse use = SignUse::past;
  std::optional<Currency> code;          ///< when the sign is an ISO code
  std::span<const Currency> currencies;  ///< else its currencies; lives as long as the program

  /// Whether the sign can mean `currency`.
  bool admits(Currency currency) const;
  /// The currency meant, given the hint; nothing when the sign alone does not say.
  std::optional<Currency> resolve(std::optional<Currency> hint) const;
  /// The largest number of minor digits among its currencies; 2 when it has none.
  int widest_exponent() const;
};

/// The longest sign that begins at `at` of folded text and ends where a word could end.
std::optional<SignMatch> match_sign(std::u32string_view chars, std::size_t at);

}  // namespace rangebook
