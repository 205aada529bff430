// Fuzz entry: any bytes as name and description (parted by the first line break); every reading
// quotes words of its field.
#include <algorithm>
#include <string_view>

#include "tests/fuzz/require.h"
#include "tracker/attribute_reader.h"

namespace rangebook {
namespace {

void check_reading(const AttributeReading& reading, std::string_view field) {
  require(!reading.value.empty(), "a reading has a value");
  require(reading.begin < reading.end && reading.end <= field.size(), "its place is in the field");
  require(field.substr(reading.begin, reading.end - reading.begin) == reading.words,
          "its words stand at its place");
}

void check(std::string_view text) {
  const auto end = std::min(text.find('\n'), text.size());
  const auto name = text.substr(0, end);
  const auto description = text.substr(std::min(end + 1, text.size()));
  const Attributes attributes = read_attributes(name, description);
  for (std::size_t i = 0; i < attributes.readings.size(); ++i) {
    const auto& reading = attributes.readings[i];
    check_reading(reading, reading.field == AttributeReading::Field::name ? name : description);
    require(i == 0 || attributes.readings[i - 1] < reading, "readings are in order");
  }
  require(attributes == read_attributes(name, description), "reading again gives the same");
}

}  // namespace
}  // namespace rangebook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  rangebook::check(rangebook::as_text(data, size));
  return 0;
}
