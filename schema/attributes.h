// What a name and a description say about the cut of a garment, with the words they say it in.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

enum class Attribute : std::uint8_t {
  sleeve_length,
  sleeve_type,
  neckline,
  collar,
  length,
  fit,    ///< how close to the body
  shape,  ///< of legs and skirts
  pattern,
  waist_position,
  waist_detail,
  fastening,
  pockets,
};
inline constexpr std::size_t kAttributeCount = 12;
std::string_view to_string(Attribute attribute);  ///< `sleeve-length`
std::optional<Attribute> parse_attribute(std::string_view name);

/// A garment has one length and one neckline, but may have a zip and buttons. Two values of such an
/// attribute contradict each other, or stand for a choice the shop offers.
bool has_one_value(Attribute attribute);

/// One statement: bytes `begin` up to, not including, `end` of the field are the words.
struct AttributeReading {
  enum class Field : std::uint8_t { name, description };
  Attribute attribute = Attribute::sleeve_length;
  std::string value;  ///< of schema/tables/attributes.tsv, such as `three-quarter`
  Field field = Field::name;
  std::size_t begin = 0;
  std::size_t end = 0;
  std::string words;  ///< verbatim

  auto operator<=>(const AttributeReading&) const = default;
};

/// All statements, ordered by attribute, value, field, place; the first of each field for a value.
struct Attributes {
  std::vector<AttributeReading> readings;

  /// The values stated, each once, in order.
  std::vector<std::string_view> values(Attribute attribute) const;
  /// More than one value where there can be one: none is chosen.
  bool contradicts(Attribute attribute) const;
  /// The one value stated; nothing where there is none or several.
  std::optional<std::string_view> value(Attribute attribute) const;

  bool operator==(const Attributes&) const = default;
};

}  // namespace rangebook
