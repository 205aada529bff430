// Undertone, value, chroma and family from rounded lightness, chroma and hue.
#include "tracker/colour_traits.h"

#include <cmath>

namespace rangebook {
namespace {

/// In tenths; the hue from 0 up to, not including, 3600.
struct Tenths {
  int lightness = 0;
  int chroma = 0;
  int hue = 0;
};

int tenths(double value) { return static_cast<int>(std::floor(value * 10 + 0.5)); }

Tenths tenths_of(Srgb colour) {
  const Lch lch = lch_of(lab_of(colour));
  return {tenths(lch.lightness), tenths(lch.chroma), tenths(lch.hue) % 3600};
}

bool is_grey(const Tenths& colour) { return colour.chroma < kGreyChroma; }

Undertone undertone_of(const Tenths& colour) {
  if (is_grey(colour)) return Undertone::neutral;
  if (colour.hue >= kWarmFrom && colour.hue < kWarmTo) return Undertone::warm;
  if (colour.hue >= kCoolFrom || colour.hue < kCoolTo) return Undertone::cool;
  return Undertone::neutral;
}

ColourValue value_of(const Tenths& colour) {
  if (colour.lightness >= kLightFrom) return ColourValue::light;
  return colour.lightness < kDeepBelow ? ColourValue::deep : ColourValue::medium;
}

ColourChroma chroma_of(const Tenths& colour) {
  if (is_grey(colour)) return ColourChroma::none;
  return colour.chroma >= kClearChroma ? ColourChroma::clear : ColourChroma::muted;
}

HueFamily grey_family(const Tenths& colour) {
  if (colour.lightness >= 900) return HueFamily::white;
  return colour.lightness < 220 ? HueFamily::black : HueFamily::grey;
}

/// Weak blues that are not light, such as slate, count as grey; their undertone stays cool.
bool is_slate(const Tenths& colour) {
  return colour.chroma < 90 && colour.lightness < 700 && colour.hue >= 2000 && colour.hue < 3000;
}

/// Weak or dark colours between red and yellow-green have names of their own: beige and brown.
/// Peaches are weak too, but orange to everyone.
bool is_earth(const Tenths& colour) {
  if (colour.lightness >= 850 && colour.chroma < 200) return colour.hue < 1100;
  if (colour.hue >= 950) return false;
  const bool peach = colour.hue < 700 && colour.lightness >= 700 && colour.chroma >= 250;
  const bool dark = colour.lightness < 560 && colour.chroma < 460;
  return dark || (colour.chroma < 400 && !peach);
}

HueFamily orange_to_lime_family(const Tenths& colour) {
  if (is_earth(colour)) return colour.lightness >= 620 ? HueFamily::beige : HueFamily::brown;
  if (colour.hue < 700) return HueFamily::orange;
  const bool olive = colour.chroma < 400 && colour.lightness < 800;
  return olive || colour.hue >= 1080 ? HueFamily::green : HueFamily::yellow;
}

/// True from magenta over pink to red: up to 40 degrees, a little further for strong reds such as
/// brick and for the palest pinks.
bool is_rose(const Tenths& colour) {
  if (colour.hue >= 3400 || colour.hue < 400) return true;
  return colour.hue < (colour.lightness >= 750 ? 500 : 450) &&
         (colour.chroma >= 400 || colour.lightness >= 750);
}

/// Pinks are the light reds, purples the deep magentas.
HueFamily rose_family(const Tenths& colour) {
  if (colour.hue >= 3400) return colour.lightness >= 400 ? HueFamily::pink : HueFamily::purple;
  const int bluish = colour.chroma >= 600 ? 420 : 550;
  return colour.lightness >= (colour.hue < 200 ? bluish : 600) ? HueFamily::pink : HueFamily::red;
}

/// CIELAB bends strong blues towards purple, so their limit lies further on.
bool is_blue(const Tenths& colour) { return colour.hue < (colour.chroma >= 750 ? 3100 : 2980); }

HueFamily family_of(const Tenths& colour) {
  if (is_grey(colour)) return grey_family(colour);
  if (is_slate(colour)) return HueFamily::grey;
  if (is_rose(colour)) return rose_family(colour);
  if (colour.hue < 1200) return orange_to_lime_family(colour);
  if (colour.hue < 1780) return HueFamily::green;
  if (colour.hue < 2250) return HueFamily::teal;
  return is_blue(colour) ? HueFamily::blue : HueFamily::purple;
}

}  // namespace

ColourTraits traits_of(Srgb colour) {
  const Tenths measured = tenths_of(colour);
  return {family_of(measured), undertone_of(measured), value_of(measured), chroma_of(measured)};
}

ColourPlace place_of(Srgb colour) {
  const Tenths place = tenths_of(colour);
  return {static_cast<std::uint32_t>(place.hue), static_cast<std::uint32_t>(place.lightness),
          place.chroma < kGreyChroma};
}

int difference_tenths(Srgb one, Srgb other) {
  return tenths(ciede2000(lab_of(one), lab_of(other)));
}

bool nearly_one_colour(Srgb one, Srgb other) { return difference_tenths(one, other) <= kNearlyOne; }

}  // namespace rangebook
