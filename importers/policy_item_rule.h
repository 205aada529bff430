// What a sentence says about goods it names: "not returnable", "exchange only", "unopened only".
#pragma once

#include <optional>

#include "importers/policy_sentence.h"

namespace rangebook {

/// Goods that may have a seal or a strip.
bool is_sealable(const PolicyMark& item);

/// What the sentence says about one of its items; nothing if it only mentions it. `in_list`: it is
/// a line of a list of what cannot come back.
std::optional<ItemRule> policy_item_rule(const PolicySentence& s, const PolicyMark& item,
                                         bool in_list);

}  // namespace rangebook
