// What the answer for one capture depends on, in a few bytes: equal fingerprints, equal answers.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "tracker/identity/roll.h"
#include "tracker/likeness/likeness_matcher.h"

namespace rangebook {

/// Of find_links for the capture at `place`: the captures up to it in their order, the shop's size
/// system, the decisions that touch lines seen by then, the options, and `program`, which stands
/// for the rules themselves. A later capture, or a decision about later lines, leaves it as it was.
std::string finds_fingerprint(const Roll& roll, std::uint32_t place, const LikenessOptions& options,
                              std::string_view program);

}  // namespace rangebook
