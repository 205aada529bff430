// Where words stand beside an amount.
#pragma once

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string_view>

#include "importers/policy_sentence.h"

namespace rangebook {

/// The mark of a role that ends shortly before a token, with no amount in between.
inline const PolicyMark* close_before(const PolicySentence& s, PolicyRole role, std::uint32_t at,
                                      std::uint32_t reach) {
  const PolicyMark* found = nullptr;
  for (const auto& mark : s.marks) {
    if (mark.begin >= at) break;
    if (mark.role == PolicyRole::money || mark.role == PolicyRole::span) found = nullptr;
    if (mark.role == role && mark.end <= at && mark.end + reach >= at) found = &mark;
  }
  return found;
}

inline std::ptrdiff_t amount_count(const PolicySentence& s) {
  return std::count_if(s.marks.begin(), s.marks.end(),
                       [](const PolicyMark& one) { return one.role == PolicyRole::money; });
}

inline bool close_after(const PolicySentence& s, PolicyRole role, std::uint32_t at) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == role && one.begin >= at && one.begin <= at + 1;
  });
}

inline bool is_range_word(std::string_view word) {
  static constexpr std::string_view kWords[] = {"-",  "to",  "bis", "and",    "und", "a",
                                                "et", "tot", "en",  "jusqu'", "up",  "y"};
  return std::find(std::begin(kWords), std::end(kWords), word) != std::end(kWords);
}

/// "Spend 20.00 more and it is free": what is missing from a basket.
inline bool is_missing(const PolicySentence& part, const PolicyMark& amount) {
  return word_between(part, amount.end, amount.end + 1, {"more", "away", "mehr", "meer", "mas"}) ||
         (part.word(amount.end) == "de" && part.word(amount.end + 1) == "plus") ||
         (amount.begin > 0 &&
          word_between(part, amount.begin < 3 ? 0 : amount.begin - 3, amount.begin,
                       {"another", "further", "noch", "nog", "encore", "weitere"}) &&
          part.has(PolicyRole::free));
}

}  // namespace rangebook
