// What a shop of one kind of goods sells: "the shoes must be unworn" is said of all it has.
#pragma once

#include <set>
#include <string_view>
#include <vector>

#include "importers/policy_sentence.h"

namespace rangebook {

/// The kinds of goods (shoes, jewellery, hats) that the policy speaks of as what is ordered, and
/// that it refuses nowhere as a whole.
std::set<std::string_view> own_goods(const std::vector<PolicySentence>& sentences);

/// Drops the marks of these goods from a sentence that refuses nothing.
void leave_out_goods(PolicySentence& sentence, const std::set<std::string_view>& goods);

}  // namespace rangebook
