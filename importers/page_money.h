// Amounts of money in running text: where they stand, not what they are worth. The reading of an
// amount is the money parser's, which gets the text as it stands.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// A number beside the sign or code of a currency.
struct PageMoney {
  std::size_t begin = 0;  ///< of number and sign, in the text
  std::size_t end = 0;
  std::string currency;     ///< ISO 4217, where the sign means one currency; else empty
  std::int64_t amount = 0;  ///< comparable_amount
};

/// The amounts in `text`, in order. A number without a sign of currency is none, nor is one with
/// more than one reading of its separators that no currency has.
std::vector<PageMoney> find_money(std::string_view text);

}  // namespace rangebook
