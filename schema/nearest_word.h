// The nearest word to a mistyped one.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// The candidate with the fewest edits (insert, delete, replace, swap of neighbours), if it is
/// near enough to be meant: at most a third of the word's length, at least one.
std::optional<std::string> nearest_word(std::string_view word,
                                        const std::vector<std::string>& candidates);

/// ` Did you mean "harbour"?`, or nothing.
std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates);

}  // namespace rangebook
