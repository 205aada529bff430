// Colour names and the words beside them, indexed for look-up (schema/tables/colours.tsv,
// colour_words.tsv).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "schema/colour.h"

namespace rangebook {

struct NamedColour {
  Srgb colour;
  bool plain = false;  ///< red, blu, grijs: the everyday word of a hue family
  bool leads = false;  ///< French, Spanish, Italian: what describes it stands behind it
};

enum class ColourEffect : std::uint8_t { lighten, darken, mute, wash, brighten, keep, join, print };
struct ColourWord {
  ColourEffect effect = ColourEffect::keep;
  int percent = 0;
};

/// Words a name or a word of the tables may have: light goldenrod yellow, carta da zucchero.
inline constexpr std::size_t kLongestColourName = 4;

/// By folded words without gaps between them, so that "midnight blue" finds CSS midnightblue.
std::optional<NamedColour> find_colour(const std::string& joined);
std::optional<ColourWord> find_colour_word(const std::string& joined);

/// A compound: `dunkelblau`, `blaumeliert`.
struct ColourCompound {
  NamedColour colour;
  ColourWord word;
};
std::optional<ColourCompound> find_colour_compound(const std::string& joined);

/// What a word beside a colour does to it. Whole numbers only.
Srgb with_effect(Srgb colour, ColourWord word);

/// `#1f2a44` or `#abc`; nothing for anything else.
std::optional<Srgb> parse_hex_colour(std::string_view text);

}  // namespace rangebook
