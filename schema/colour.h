// Colours as values, and the words a stylist sorts them by.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// 8 bits a channel, IEC 61966-2-1.
struct Srgb {
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;
  auto operator<=>(const Srgb&) const = default;
};

/// Yellow-based or blue-based; `neutral` for greys, and for true reds and greens between both.
enum class Undertone : std::uint8_t { warm, cool, neutral };
/// How light a colour is, whatever its hue.
enum class ColourValue : std::uint8_t { light, medium, deep };
/// How strong a colour is; `none` for black, white and greys, which are neither.
enum class ColourChroma : std::uint8_t { clear, muted, none };
enum class HueFamily : std::uint8_t {
  white,
  grey,
  black,
  beige,  ///< with cream, ecru and camel
  brown,
  red,
  pink,
  orange,
  yellow,
  green,
  teal,  ///< between green and blue
  blue,
  purple,
};
inline constexpr std::size_t kHueFamilies = 13;

struct ColourTraits {
  HueFamily family = HueFamily::grey;
  Undertone undertone = Undertone::neutral;
  ColourValue value = ColourValue::medium;
  ColourChroma chroma = ColourChroma::none;
  auto operator<=>(const ColourTraits&) const = default;
};

std::string_view to_string(Undertone undertone);  ///< `warm`
std::string_view to_string(ColourValue value);    ///< `light`
std::string_view to_string(ColourChroma chroma);  ///< `clear`
std::string_view to_string(HueFamily family);     ///< `teal`
std::string to_string(Srgb colour);               ///< `#1f2a44`

/// What a colour name of a shop says.
struct ColourReading {
  enum class Kind : std::uint8_t {
    unknown,  ///< no part of the table: nothing is guessed
    single,   ///< one colour
    several,  ///< `navy/white`: the known ones of several colours, in the order named
    print,    ///< a pattern, with the colours named beside it, if any: `blue floral`, `leopard`
  };
  Kind kind = Kind::unknown;
  std::vector<Srgb> colours;  ///< one for `single`, none for `unknown`
  /// A word before the colour is not known (`harbour blue`): the colour is that of the known rest.
  bool approximate = false;

  bool operator==(const ColourReading&) const = default;
};

}  // namespace rangebook
