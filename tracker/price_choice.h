// Which number of a price text is the price: the signs, words and marks around each number decide,
// and where they do not, the text is left undecided.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "tracker/money_parser.h"
#include "tracker/price_number.h"
#include "tracker/price_tokens.h"

namespace rangebook {

/// A number of the text that may be the price.
struct PriceNumber {
  std::vector<PlainNumber> readings;  ///< as read_number gives them for its currency
  std::u32string_view text;           ///< its characters; points into the folded text
  bool has_sign = false;              ///< a currency sign belongs to it
  std::optional<Currency> currency;   ///< of that sign, where sign and hint settle it
  WordRole role = WordRole::none;     ///< `was`, `now` or `per`, else none
  bool negative = false;
  bool doubtful = false;  ///< a word or mark makes its value unsure ("up to 50", "1.2k", "12:50")
  bool linked = false;    ///< joined to another number ("12 - 15", "2 for 10")
  bool worded = false;    ///< a word stands directly beside it ("size 12")
  bool enclosed = false;  ///< in parentheses
};

/// The numbers of the text that can be prices, in order. Percentages, quantities with a unit,
/// numbers inside codes ("MX924") and reductions ("save 10") are left out.
std::vector<PriceNumber> price_numbers(std::u32string_view chars,
                                       const std::vector<PriceToken>& tokens,
                                       const MoneyHints& hints);

/// The numbers that remain when all that can be told apart is told apart: none when there is no
/// price, one when it is clear, several when the text does not say which one is meant. Rules, in
/// order:
/// 1. Beside a number with a currency sign, one without is left out if a word goes with it and it
///    is not linked.
/// 2. Where words say "now", only that amount stays; else "was" amounts and unit prices go, unless
///    they are all there is. A "was" amount below what stays is a misreading: all stay.
/// 3. An amount in the hinted currency goes before those in others; then amounts in parentheses go
///    if their currency is another one ("8000 AED (2179 USD)").
/// 4. Equal amounts count once.
std::vector<PriceNumber> choose_price(std::vector<PriceNumber> numbers,
                                      std::optional<Currency> hint);

}  // namespace rangebook
