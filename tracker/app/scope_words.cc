// Scopes are checked against the category tree: a mistyped category would cover nothing.
#include "tracker/app/scope_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "schema/nearest_word.h"
#include "tracker/category_parser.h"

namespace rangebook {
namespace {

std::vector<std::string> category_names() {
  std::vector<std::string> names;
  for (const auto slug : all_categories()) names.emplace_back(slug);
  return names;
}

}  // namespace

std::variant<std::string, CategoryProblem> parse_category(const std::string& word) {
  const std::string slug(find_category(word, ""));
  if (is_category(slug)) return slug;
  return CategoryProblem{fmt::format("\"{}\" is no category.{} There are: {}", word,
                                     did_you_mean(word, category_names()),
                                     joined(category_names()))};
}

std::variant<Scope, std::string> parse_scope(std::string_view text) {
  Scope scope;
  if (text == "all") return scope;
  scope.kind = text == "picks" ? Scope::Kind::picks : Scope::Kind::categories;
  if (scope.kind == Scope::Kind::picks) return scope;
  while (!text.empty()) {
    const std::size_t at = std::min(text.find(','), text.size());
    const std::string word(text.substr(0, at));
    text.remove_prefix(std::min(at + 1, text.size()));
    if (word.empty()) continue;
    const auto slug = parse_category(word);
    if (const auto* problem = std::get_if<CategoryProblem>(&slug)) {
      return fmt::format("--scope: {}; or all, or picks.", problem->message);
    }
    scope.categories.push_back(std::get<std::string>(slug));
  }
  std::sort(scope.categories.begin(), scope.categories.end());
  const auto end = std::unique(scope.categories.begin(), scope.categories.end());
  scope.categories.erase(end, scope.categories.end());
  if (scope.categories.empty()) return "--scope names no category.";
  return scope;
}

std::vector<std::string> size_system_names() {
  std::vector<std::string> names;
  for (auto i = static_cast<int>(SizeSystem::alpha); i <= static_cast<int>(SizeSystem::one_size);
       ++i) {
    names.emplace_back(to_string(static_cast<SizeSystem>(i)));
  }
  return names;
}

std::string joined(const std::vector<std::string>& words) {
  return fmt::format("{}", fmt::join(words, ", "));
}

}  // namespace rangebook
