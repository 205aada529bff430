// Finding the line that is meant by a code, a name or a reference.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "tracker/app/pipeline.h"
#include "tracker/app/shop_lines.h"

namespace rangebook {

/// The lines that match what was typed, each by its latest sighting in words that match. Lines of
/// two codes stand apart even where they are one line over time.
using LineMatches = std::vector<SightingAt>;

/// What stands between spaces.
std::vector<std::string> words_in(const std::string& text);

/// Lines by code, then reference, then name, then words of the name: the first of these that finds
/// any, in the order of codes and names. None: a sentence with the nearest word there is.
std::variant<LineMatches, NotThere> find_lines(ShopLines& lines, const std::string& word);

/// Several lines match: says which, and how to name one of them.
NotThere too_many(ShopLines& lines, const std::string& word, const LineMatches& matches);

}  // namespace rangebook
