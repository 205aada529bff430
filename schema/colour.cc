// Names of the words for colours.
#include "schema/colour.h"

#include <fmt/format.h>

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<Undertone, 3> kUndertones{{
    {Undertone::warm, "warm"},
    {Undertone::cool, "cool"},
    {Undertone::neutral, "neutral"},
}};
constexpr NameTable<ColourValue, 3> kValues{{
    {ColourValue::light, "light"},
    {ColourValue::medium, "medium"},
    {ColourValue::deep, "deep"},
}};
constexpr NameTable<ColourChroma, 3> kChromas{{
    {ColourChroma::clear, "clear"},
    {ColourChroma::muted, "muted"},
    {ColourChroma::none, "none"},
}};
constexpr NameTable<HueFamily, kHueFamilies> kFamilies{{
    {HueFamily::white, "white"},
    {HueFamily::grey, "grey"},
    {HueFamily::black, "black"},
    {HueFamily::beige, "beige"},
    {HueFamily::brown, "brown"},
    {HueFamily::red, "red"},
    {HueFamily::pink, "pink"},
    {HueFamily::orange, "orange"},
    {HueFamily::yellow, "yellow"},
    {HueFamily::green, "green"},
    {HueFamily::teal, "teal"},
    {HueFamily::blue, "blue"},
    {HueFamily::purple, "purple"},
}};

}  // namespace

std::string_view to_string(Undertone undertone) { return name_of(kUndertones, undertone); }
std::string_view to_string(ColourValue value) { return name_of(kValues, value); }
std::string_view to_string(ColourChroma chroma) { return name_of(kChromas, chroma); }
std::string_view to_string(HueFamily family) { return name_of(kFamilies, family); }

std::string to_string(Srgb colour) {
  return fmt::format("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue);
}

}  // namespace rangebook
