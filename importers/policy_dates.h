// Dates of a policy's sentences: "31 January", "24.12.", Christmas Eve, the end of a month.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "importers/policy_tokens.h"

namespace rangebook {

struct PolicyDate {
  SeasonDay day = {};
  std::size_t end = 0;  ///< the token behind it
};

/// The date that begins at a token; nothing if none does.
std::optional<PolicyDate> policy_date(const std::vector<PolicyToken>& tokens, std::size_t at);

}  // namespace rangebook
