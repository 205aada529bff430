// Words of the command line for scopes and size systems.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "schema/capture.h"

namespace rangebook {

/// `all`, `picks`, or categories with commas, as slugs or in a shop's words (`Jackets & Coats`);
/// else a sentence that says what is wrong.
std::variant<Scope, std::string> parse_scope(std::string_view text);

/// Why a word is no category, and which there are.
struct CategoryProblem {
  std::string message;
};
/// The slug of one category, given as slug or in a shop's words.
std::variant<std::string, CategoryProblem> parse_category(const std::string& word);

std::vector<std::string> size_system_names();

/// `a, b, c`.
std::string joined(const std::vector<std::string>& words);

}  // namespace rangebook
