// Colour names as shops list them; what they mean is in colour_reader.h.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// The colours a cell lists, trimmed: `navy|ecru` is two; `;` and line ends part as well. A single
/// "/" or "," stays part of the name ("black/white" is one two-tone colourway). Empty parts are
/// left out.
std::vector<std::string> split_colours(std::string_view cell);

/// Key under which two spellings are the same colour of a line: case and accents folded, spaces and
/// hyphens as one space, none around a slash, "grey" and "gray" alike.
std::string colour_key(std::string_view name);

}  // namespace rangebook
