// Colour names as shops use them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

struct Srgb {
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;
  bool operator==(const Srgb&) const = default;
};

/// The colours a cell lists, trimmed: `navy|ecru` is two. A single "/" stays part of the name
/// ("black/white" is one two-tone colourway). Empty parts are left out.
std::vector<std::string> split_colours(std::string_view cell);

/// Key under which two spellings are the same colour of a line: case folded, spaces and hyphens
/// as one space, "grey" and "gray" alike.
std::string colour_key(std::string_view name);

/// Colour value of a name, from schema/tables/colours.tsv; a known name within the text is used
/// when the whole is not known ("washed navy"). Nothing when no part is known.
std::optional<Srgb> colour_value(std::string_view name);

}  // namespace rangebook
