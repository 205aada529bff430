// Reading prices as shops write them, in any locale's form.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "schema/money.h"

namespace rangebook {

/// What is known of a price besides its own text.
struct MoneyHints {
  std::optional<Currency> currency;  ///< of the column, the row or the shop
  std::optional<char> decimal_sign;  ///< '.' or ',' when the document's other rows settle it
};

/// An exact decimal number as written: `unscaled` / 10^`scale`.
struct DecimalAmount {
  std::int64_t unscaled = 0;
  int scale = 0;
  bool operator==(const DecimalAmount&) const = default;
};

struct MoneyProblem {
  enum class Kind : std::uint8_t {
    no_amount,     ///< no number that can be a price: none, a percentage, a saving, a quantity
    ambiguous,     ///< several readings, or a word or mark that makes the only one unsure
    no_currency,   ///< a number, but no currency in the text nor in the hints; or a sign that the
                   ///< hint does not settle, or of a withdrawn currency
    too_precise,   ///< more digits than the currency's minor unit, and not zeros
    out_of_range,  ///< does not fit, or the text is too long for a price
    negative,
  };
  Kind kind = Kind::no_amount;
  std::string what;  ///< one sentence with the text in quotes and what to do
  /// Plain decimals in the order of the text, for `ambiguous` and `too_precise`; may be empty when
  /// the separators make no number.
  std::vector<std::string> readings;
};

using MoneyResult = std::variant<Money, MoneyProblem>;

/// Reads one price. A price with no separator conflict is read; "1.299" in a currency with two
/// decimals is one thousand two hundred ninety-nine; text with two honest readings is a problem
/// that shows both, unless `hints.decimal_sign` settles it (tracker/price_number.h has the rules).
/// Where '.' is proven to be the decimal sign, "1.299" EUR is too precise, with both readings.
/// Two prices in one text are ambiguous ("11.95 - 15.95"), unless words tell them apart: "now 40,
/// was 50" (tracker/price_choice.h). "from 39" is 39; "free" is zero. A currency in the text wins
/// over the hint. Plain digits with a currency hint take a short path that allocates nothing.
MoneyResult parse_money(std::string_view text, const MoneyHints& hints);

/// The number alone, as `parse_money` reads it, without a currency's limits.
/// Nothing when there is no number or it is ambiguous.
std::optional<DecimalAmount> parse_amount(std::string_view text, const MoneyHints& hints);

/// The currency named or signed in the text; a sign that several currencies share ("$", "kr") is
/// read only when the hint is one of them.
std::optional<Currency> find_currency(std::string_view text, std::optional<Currency> hint);

/// '.' or ',' when the text alone proves it to be the decimal sign ("12,50", "1.299,00"); used to
/// settle the other rows of a document.
std::optional<char> proven_decimal_sign(std::string_view text);

}  // namespace rangebook
