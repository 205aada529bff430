// The rules that tell one price from the other numbers of a text.
#include "tracker/price_choice.h"

#include <algorithm>

namespace rangebook {
namespace {

/// Keeps the numbers that `wanted` accepts, if there are any, and what is joined to another number
/// without a sign of its own ("now 29 - 39"); else all of them.
template <typename Wanted>
void prefer(std::vector<PriceNumber>& numbers, Wanted wanted) {
  if (std::ranges::none_of(numbers, wanted)) return;
  std::erase_if(numbers, [&](const auto& number) { return !wanted(number) && !number.linked; });
}

bool same_price(const PriceNumber& one, const PriceNumber& other) {
  const bool alike = one.readings.size() == 1 && other.readings.size() == 1 &&
                     same_amount(one.readings.front(), other.readings.front());
  const bool one_currency = !one.has_sign || !other.has_sign || one.currency == other.currency;
  return alike && one_currency && !one.doubtful && !other.doubtful;
}

/// Some former price is below every price that stays, so the words were misread.
bool was_is_below(const std::vector<PriceNumber>& numbers) {
  const auto below = [&](const PriceNumber& was) {
    return was.role == WordRole::was && !was.readings.empty() &&
           std::ranges::any_of(numbers, [&](const PriceNumber& other) {
             return other.role != WordRole::was && other.role != WordRole::per &&
                    !other.readings.empty() && was.currency == other.currency &&
                    smaller_amount(was.readings.front(), other.readings.front());
           });
  };
  return std::ranges::any_of(numbers, below);
}

/// A number without a sign that a word explains ("size 12") and nothing joins to a price.
bool is_explained(const std::vector<PriceNumber>& numbers, std::size_t i) {
  const PriceNumber& number = numbers[i];
  const bool joined = number.linked || (i + 1 < numbers.size() && numbers[i + 1].linked);
  return !number.has_sign && !joined && (number.worded || number.enclosed);
}

void drop_bare_numbers(std::vector<PriceNumber>& numbers) {
  if (std::ranges::none_of(numbers, &PriceNumber::has_sign)) return;
  for (std::size_t i = numbers.size(); i-- > 0;) {
    if (is_explained(numbers, i)) numbers.erase(numbers.begin() + static_cast<std::ptrdiff_t>(i));
  }
}

/// The same price in several currencies: the one asked for stays, and what has no sign.
void drop_other_currencies(std::vector<PriceNumber>& numbers, Currency hint) {
  const auto hinted = [&](const PriceNumber& number) { return number.currency == hint; };
  if (std::ranges::none_of(numbers, hinted)) return;
  std::erase_if(numbers, [&](const auto& number) { return number.has_sign && !hinted(number); });
}

/// "8000 AED (2179 USD)": an amount of another currency in parentheses is a conversion. Of the same
/// currency it may be the price with or without tax, so it stays.
void drop_enclosed_conversions(std::vector<PriceNumber>& numbers) {
  const auto open = std::ranges::find(numbers, false, &PriceNumber::enclosed);
  if (open == numbers.end()) return;
  const auto currency = open->currency;
  std::erase_if(numbers, [&](const auto& number) {
    return number.enclosed && number.has_sign && number.currency != currency;
  });
}

void drop_equal(std::vector<PriceNumber>& numbers) {
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    for (std::size_t k = numbers.size() - 1; k > i; --k) {
      if (!same_price(numbers[i], numbers[k])) continue;
      if (!numbers[i].has_sign) numbers[i] = numbers[k];
      numbers.erase(numbers.begin() + static_cast<std::ptrdiff_t>(k));
    }
  }
}

}  // namespace

std::vector<PriceNumber> choose_price(std::vector<PriceNumber> numbers,
                                      std::optional<Currency> hint) {
  drop_bare_numbers(numbers);
  if (!was_is_below(numbers)) {
    prefer(numbers, [](const auto& number) { return number.role == WordRole::now; });
    prefer(numbers, [](const auto& number) { return number.role == WordRole::none; });
  }
  if (hint) drop_other_currencies(numbers, *hint);
  drop_enclosed_conversions(numbers);
  drop_equal(numbers);
  return numbers;
}

}  // namespace rangebook
