// Changes of a whole category or shop: size reach, entry price, price index.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "demo-feeds/story.h"

namespace demo {

/// `{system, fit, labels[], min, max}`; `sizes` are of one system and fit, smallest first.
nlohmann::ordered_json size_fact(const std::vector<SizeStep>& sizes);

/// The expected changes with `line` null, by kind and then category, `all` first. Only categories
/// that both captures looked at.
std::vector<nlohmann::ordered_json> category_changes(const Capture& from, const Capture& to,
                                                     const std::string& currency);

}  // namespace demo
