// Colour names as shops use them.
#pragma once

#include <cstddef>
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

/// The colours a cell lists, trimmed: `navy|ecru` is two; `;` and line ends part as well. A single
/// "/" or "," stays part of the name ("black/white" is one two-tone colourway). Empty parts are
/// left out.
std::vector<std::string> split_colours(std::string_view cell);

/// Key under which two spellings are the same colour of a line: case and accents folded, spaces and
/// hyphens as one space, none around a slash, "grey" and "gray" alike.
std::string colour_key(std::string_view name);

/// A colour name longer than this has no value.
inline constexpr std::size_t kMaxColourBytes = 200;

/// Colour value of a name, from schema/tables/colours.tsv, retail terms before CSS names. When the
/// whole is not known, the last known name within it counts ("washed navy"), the longest where
/// several end there ("pale dusty pink"); of a two-tone colour only the first ("navy/white
/// stripe"). Nothing when no part is known.
std::optional<Srgb> colour_value(std::string_view name);

}  // namespace rangebook
