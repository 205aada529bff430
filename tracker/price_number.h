// Numbers in price text: how far one reaches, and which amounts its separators can mean.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// A number without separators. Digits only, both may be long; `whole` has no leading zeros except
/// a single one.
struct PlainNumber {
  std::string whole;
  std::string fraction;  ///< as written, with its zeros
  bool operator==(const PlainNumber&) const = default;
};

/// `1299.5` for `{1299, 5}`.
std::string decimal_text(const PlainNumber& number);

/// True when the two are the same amount: trailing zeros of the fraction do not count.
bool same_amount(const PlainNumber& one, const PlainNumber& other);
/// True when `one` is the smaller amount.
bool smaller_amount(const PlainNumber& one, const PlainNumber& other);

/// How many characters of folded text the number at `at` takes, with its separators; 0 when none
/// begins there. Groups of three digits are joined over a space or an apostrophe.
std::size_t number_length(std::u32string_view chars, std::size_t at);

/// All honest readings of a number token in a currency with `exponent` minor digits: one when it is
/// clear, several when it is ambiguous, none when its separators make no number.
///
/// - Two kinds of separator: the last is the decimal sign.
/// - One separator before one, two or more than three digits, or after a lone zero, or after more
///   than three digits: a decimal sign ("12,5", "0.500", "1234.567", "1,2345").
/// - One separator before three digits: thousands, if the currency has fewer than three minor
///   digits ("1.299" EUR); else both. A `decimal_sign` hint settles it, except that a currency
///   without minor digits keeps both.
/// - A separator repeated: groups of three (or 2-2-3 with commas, as in India); a last group of two
///   is a fraction ("1.299.00").
/// - Two groups of three integer digits parted by a plain space may be two prices ("399 299"),
///   unless the second begins with 0.
std::vector<PlainNumber> read_number(std::u32string_view token, int exponent,
                                     std::optional<char> decimal_sign);

/// The decimal sign the token proves by itself, '.' or ','.
std::optional<char> proven_sign_of(std::u32string_view token);

}  // namespace rangebook
