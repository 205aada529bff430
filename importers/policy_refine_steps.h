// The refinements of marks about returns, and what all refinements ask of marks and words.
#pragma once

#include <algorithm>
#include <initializer_list>
#include <string_view>
#include <vector>

#include "importers/policy_tokens.h"

namespace rangebook {

using PolicyMarks = std::vector<PolicyMark>;
using PolicyTokens = std::vector<PolicyToken>;

inline bool has_role(const PolicyMarks& marks, std::initializer_list<PolicyRole> roles) {
  return std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
    return std::find(roles.begin(), roles.end(), one.role) != roles.end();
  });
}

/// True where [begin, end) holds at most three words, all of them among `words`.
inline bool only_words(const PolicyTokens& tokens, std::uint32_t begin, std::uint32_t end,
                       std::initializer_list<std::string_view> words) {
  if (end < begin || end > begin + 3 || end > tokens.size()) return false;
  return std::all_of(tokens.begin() + begin, tokens.begin() + end, [&](const PolicyToken& one) {
    return std::find(words.begin(), words.end(), one.word) != words.end();
  });
}

inline bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

void name_return_costs(PolicyMarks& marks, const PolicyTokens& tokens);
void turn_receipts(PolicyMarks& marks, const PolicyTokens& tokens);
void drop_inner_returns(PolicyMarks& marks);
void add_kept_costs(PolicyMarks& marks, const PolicyTokens& tokens);
void add_prepaid(PolicyMarks& marks, const PolicyTokens& tokens);
void turn_payers(PolicyMarks& marks, const PolicyTokens& tokens);
void drop_paid_back(PolicyMarks& marks, const PolicyTokens& tokens);
void turn_loose_refunds(PolicyMarks& marks);
void add_refusals(PolicyMarks& marks, const PolicyTokens& tokens);
void turn_gift_cards(PolicyMarks& marks, const PolicyTokens& tokens);
void drop_credit_cards(PolicyMarks& marks, const PolicyTokens& tokens);

}  // namespace rangebook
