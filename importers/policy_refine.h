// What marks say beside each other: a phrase that another one next to it gives another meaning.
#pragma once

#include <vector>

#include "importers/policy_tokens.h"

namespace rangebook {

/// Changes and removes marks by what stands next to them; they stay in the order of their places.
void refine_marks(std::vector<PolicyMark>& marks, const std::vector<PolicyToken>& tokens);

/// "Try it on at home": home is a way of delivery only beside words of delivery or a price.
void drop_homes(std::vector<PolicyMark>& marks, const std::vector<PolicyToken>& tokens);

}  // namespace rangebook
