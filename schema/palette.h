// The palette of a category in one capture: how many of its colourways are warm, light, blue, and
// how many cannot be told.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "schema/colour.h"

namespace rangebook {

/// A known colour and where it lies.
struct PaletteColour {
  std::string name;  ///< as first met
  Srgb colour;
  std::uint32_t hue = 0;        ///< of CIELAB, in tenths of a degree
  std::uint32_t lightness = 0;  ///< likewise, 0 to 1000
  bool grey = false;            ///< too little chroma for its hue to mean anything
  std::uint32_t colourways = 0;
  bool operator==(const PaletteColour&) const = default;
};

/// A colourway is a line in one colour. Everything adds up: known + by_family + several + prints +
/// unknown = colourways.
struct Palette {
  std::uint32_t lines = 0;
  std::uint32_t without_colour = 0;  ///< lines that state no colour
  std::uint32_t colourways = 0;
  std::uint32_t known = 0;      ///< one known colour; the three lists below add up to it
  std::uint32_t by_family = 0;  ///< approximate ("harbour blue"): only the family is certain
  std::uint32_t several = 0;    ///< two-tone and more
  std::uint32_t prints = 0;
  std::uint32_t unknown = 0;
  std::array<std::uint32_t, 3> undertones{};           ///< by Undertone
  std::array<std::uint32_t, 3> values{};               ///< by ColourValue
  std::array<std::uint32_t, 3> chromas{};              ///< by ColourChroma
  std::array<std::uint32_t, kHueFamilies> families{};  ///< by HueFamily; of known and by_family
  std::vector<std::string> unknown_names;   ///< each once as first met, most colourways first
  std::vector<PaletteColour> colours = {};  ///< the known ones, likewise, then by name

  bool adds_up() const { return known + by_family + several + prints + unknown == colourways; }
  bool operator==(const Palette&) const = default;
};

struct CategoryPalette {
  std::string category;  ///< slug, or `all` for the whole capture
  Palette palette;
  bool operator==(const CategoryPalette&) const = default;
};

/// Both captures of a comparison; a category may be missing from one.
struct PalettePair {
  std::string category;
  Palette before;
  Palette after;
  bool operator==(const PalettePair&) const = default;
};

enum class PaletteLean : std::uint8_t { warm, cool, balanced, unclear };
std::string_view to_string(PaletteLean lean);  ///< `warm`

// Common practice, no source.
/// With fewer warm and cool colourways than this, one line more or less would turn the answer.
inline constexpr std::uint32_t kLeanColourways = 10;
/// Percent of the warm and cool colourways from which one side prevails: three in five.
inline constexpr std::uint32_t kLeanPercent = 60;

/// Where the colourways that are warm or cool lean; neutral ones go with both.
PaletteLean lean_of(const Palette& palette);

}  // namespace rangebook
