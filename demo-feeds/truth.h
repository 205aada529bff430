// The list of changes the program has to find, from the scenario's own events and the two states.
#pragma once

#include <nlohmann/json.hpp>

#include "demo-feeds/story.h"

namespace demo {

/// `changes` in the shapes of the program's changes JSON, with `counts` and `reconciliation`.
/// Throws std::logic_error when the scenario does not add up.
nlohmann::ordered_json truth(const Story& story, const Comparison& comparison);

}  // namespace demo
