// What a colour is to someone who dresses people: undertone, value, chroma, family; and whether two
// colours are nearly one. Everything is decided on values rounded to tenths, so that it comes out
// the same on every machine: of all 16.7 million colours none lies nearer than 1e-8 to an edge of
// that rounding (counted once), and libraries of maths differ by less than 1e-12.
#pragma once

#include "schema/colour.h"
#include "tracker/colour_space.h"

namespace rangebook {

// Thresholds in tenths of a CIELAB unit or of a degree. Common practice, no source, where no other
// reason is named.

/// Less chroma than this is black, white or grey to the eye: ivory (9) still is a cream, charcoal
/// (1) and off-white (4) are not coloured.
inline constexpr int kGreyChroma = 50;
/// Clear from here on. Colours around C* 30.5, L* 53.3 were judged neither strong nor weak, neither
/// dynamic nor passive by 70 people (Gao & Xin, Color Research and Application 31, 2006).
inline constexpr int kClearChroma = 305;
/// Light from here on, deep below: about as far above and below L* 53.3 of the same study.
inline constexpr int kLightFrom = 670;
inline constexpr int kDeepBelow = 400;
/// Hue angles. Stylists call a colour warm when it leans to yellow and cool when it leans to blue,
/// within each hue: tomato is a warm red, raspberry a cool one. From orange-red to yellow-green is
/// warm; from blue-green over blue to raspberry is cool; true red and true green between them are
/// neutral. (Published warm-cool scales ask how warm a colour feels and call every red and pink
/// warm; that is another question.)
inline constexpr int kWarmFrom = 330;
inline constexpr int kWarmTo = 1200;
inline constexpr int kCoolFrom = 1450;
inline constexpr int kCoolTo = 200;
/// CIEDE2000 up to which two colours are nearly one, in tenths: in two photographs of two shops a
/// reader would not tell them apart. The just noticeable difference, side by side, is about 1.
inline constexpr int kNearlyOne = 50;

/// Family: greys by lightness; weak and dark oranges and yellows are beige and brown, light reds
/// pink, deep magentas purple. Its limits stand in the source, common practice, no source.
ColourTraits traits_of(Srgb colour);

/// Hue and lightness in tenths, for a map of colours.
struct ColourPlace {
  std::uint32_t hue = 0;
  std::uint32_t lightness = 0;
  bool grey = false;  ///< less chroma than kGreyChroma
};
ColourPlace place_of(Srgb colour);

/// CIEDE2000 in tenths, rounded half up.
int difference_tenths(Srgb one, Srgb other);

/// "Ink and navy are nearly one colour."
bool nearly_one_colour(Srgb one, Srgb other);

}  // namespace rangebook
