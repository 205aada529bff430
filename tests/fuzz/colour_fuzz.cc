// Fuzz entry: any bytes as a colour name; what is read fits its kind, and traits can be told of it.
#include <string>

#include "tests/fuzz/require.h"
#include "tracker/colour_parser.h"
#include "tracker/colour_reader.h"
#include "tracker/colour_traits.h"

namespace rangebook {
namespace {

void check_kind(const ColourReading& reading) {
  using Kind = ColourReading::Kind;
  const bool none = reading.colours.empty();
  switch (reading.kind) {
    case Kind::unknown:
      return require(none, "an unknown name has no colour");
    case Kind::single:
      return require(reading.colours.size() == 1, "one colour is one");
    case Kind::several:
      return require(!none, "of several colours one is known");
    case Kind::print:
      return;
  }
}

void check(std::string_view text) {
  const ColourReading reading = read_colour(text);
  check_kind(reading);
  for (const Srgb colour : reading.colours) {
    const ColourTraits traits = traits_of(colour);
    require((traits.chroma != ColourChroma::none) || traits.undertone == Undertone::neutral,
            "a grey has no undertone");
    require(difference_tenths(colour, colour) == 0, "a colour does not differ from itself");
    require(colour_value(to_string(colour)) == colour, "a value reads back");
    const Srgb first = reading.colours.front();
    require(difference_tenths(first, colour) == difference_tenths(colour, first),
            "differences are symmetric");
  }
  const std::string key = colour_key(text);
  if (text.size() <= kMaxColourBytes && key.size() <= kMaxColourBytes) {
    require(read_colour(key) == reading, "spellings of one colour read alike");
  }
}

}  // namespace
}  // namespace rangebook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  rangebook::check(rangebook::as_text(data, size));
  return 0;
}
