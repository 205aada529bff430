// Folding text for look-ups: two spellings that a reader takes for the same word give equal bytes.
#pragma once

#include <string>
#include <string_view>

namespace rangebook {

/// Lower case, without accents, in ASCII where that is possible: `Größe` gives `grosse`, `38½`
/// gives `38 1/2`, every dash gives `-`, every kind of space one plain space each. Independent of
/// the locale. Bytes that are not UTF-8 become U+FFFD. Only for comparing; never shown.
std::string fold_text(std::string_view text);

/// Without spaces at both ends; a no-break space counts as a space.
std::string_view trim_text(std::string_view text);

inline constexpr bool is_ascii_digit(char c) { return c >= '0' && c <= '9'; }
inline constexpr bool is_ascii_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

}  // namespace rangebook
