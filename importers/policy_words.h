// The tables `policy_words.tsv`, `policy_numbers.tsv` and `policy_plain.tsv`, loaded once.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "importers/policy_tokens.h"

namespace rangebook {

/// The longest phrases of the table that begin at each place; one overlaps the one before only
/// where it is longer and goes on behind it.
std::vector<PolicyMark> phrase_marks(const std::vector<PolicyToken>& tokens);

/// A number in digits or words at tokens [at, ..): its value and how many tokens it takes.
/// `article`: it is an article (`a month`), a number only before a unit.
struct PolicyNumber {
  int value = 0;
  std::size_t tokens = 0;
  bool article = false;
};
std::optional<PolicyNumber> number_at(const std::vector<PolicyToken>& tokens, std::size_t at);

/// A word of `policy_plain.tsv`, which says nothing by itself.
bool is_plain_word(std::string_view word);

/// 1 to 12.
std::optional<unsigned> month_named(std::string_view word);

}  // namespace rangebook
