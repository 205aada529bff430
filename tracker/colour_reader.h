// What a shop's colour name means: one colour, several, a print, or nothing that can be known.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "schema/colour.h"

namespace rangebook {

/// A colour name longer than this is not read.
inline constexpr std::size_t kMaxColourBytes = 200;

/// Values that win over everything else, by colour_key: a shop's own swatch, the stylist's word.
using ColourOverrides = std::map<std::string, Srgb, std::less<>>;

/// Reads a colour name in English, German, French, Spanish, Italian or Dutch, or a value
/// (`#1f2a44`, also beside a name).
///
/// - Names come from schema/tables/colours.tsv, the longest first. Words beside them (light,
/// washed,
///   dunkel-, chiaro) change the value as schema/tables/colour_words.tsv says.
/// - Two names without a joint are one colour when they lie in one family ("ruby red" is ruby) or
///   when the last one is an everyday word ("lime yellow" is approximately yellow), else several.
/// - Colours parted by a slash, a comma or a word such as "and" are several.
/// - A pattern word ("leopard", "stripe", "multi") makes it a print.
/// - An unknown word before the colour leaves it approximate ("harbour blue"); in French, Spanish
/// and
///   Italian one behind it. One behind an English name may have changed it altogether ("navy
///   pier"), so that is unknown. Nothing is guessed.
ColourReading read_colour(std::string_view name, const ColourOverrides& overrides = {});

/// The value of a name that is one colour and not approximate.
std::optional<Srgb> colour_value(std::string_view name, const ColourOverrides& overrides = {});

}  // namespace rangebook
