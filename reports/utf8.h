// Reading UTF-8 that may be broken. Names and labels come from other people's files, and a report
// must stay well formed whatever they hold.
#pragma once

#include <cstddef>
#include <string_view>

namespace rangebook {

/// U+FFFD, written in place of bytes that are not UTF-8.
inline constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

/// The next character of a text: how many bytes to step over and whether they are well formed.
struct Utf8Step {
  std::size_t bytes = 1;
  bool valid = false;
};

/// Looks at the start of `text`, which must not be empty. Ill-formed bytes are taken together as
/// the Unicode Standard recommends (section 3.9, "U+FFFD Substitution of Maximal Subparts"), so
/// that every program that follows it shows the same number of replacement characters.
Utf8Step utf8_step(std::string_view text);

}  // namespace rangebook
