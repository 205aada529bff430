// What a fuzz target demands of the code besides not crashing.
#pragma once

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>
#include <utility>

namespace rangebook {

/// Ends the run with the sentence that does not hold; libFuzzer then keeps the input.
inline void require(bool holds, const char* sentence) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %s\n", sentence);
  std::abort();
}

inline std::string_view as_text(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

/// The first line and the rest: targets take their settings from the first line, so that a corpus
/// file can be read and written by hand.
inline std::pair<std::string_view, std::string_view> first_line(std::string_view text) {
  const std::size_t end = text.find('\n');
  if (end == std::string_view::npos) return {text, {}};
  return {text.substr(0, end), text.substr(end + 1)};
}

}  // namespace rangebook
