// Names of attributes, and what their readings come to.
#include "schema/attributes.h"

#include <algorithm>

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<Attribute, kAttributeCount> kAttributeNames{{
    {Attribute::sleeve_length, "sleeve-length"},
    {Attribute::sleeve_type, "sleeve-type"},
    {Attribute::neckline, "neckline"},
    {Attribute::collar, "collar"},
    {Attribute::length, "length"},
    {Attribute::fit, "fit"},
    {Attribute::shape, "shape"},
    {Attribute::pattern, "pattern"},
    {Attribute::waist_position, "waist-position"},
    {Attribute::waist_detail, "waist-detail"},
    {Attribute::fastening, "fastening"},
    {Attribute::pockets, "pockets"},
}};

}  // namespace

std::string_view to_string(Attribute attribute) { return name_of(kAttributeNames, attribute); }
std::optional<Attribute> parse_attribute(std::string_view name) {
  return value_of(kAttributeNames, name);
}

bool has_one_value(Attribute attribute) {
  switch (attribute) {
    case Attribute::sleeve_length:
    case Attribute::neckline:
    case Attribute::length:
    case Attribute::fit:
    case Attribute::shape:
    case Attribute::waist_position:
    case Attribute::pockets:
      return true;
    case Attribute::sleeve_type:
    case Attribute::collar:
    case Attribute::pattern:
    case Attribute::waist_detail:
    case Attribute::fastening:
      return false;
  }
  return false;
}

std::vector<std::string_view> Attributes::values(Attribute attribute) const {
  std::vector<std::string_view> found;
  for (const auto& reading : readings) {
    const bool known = std::find(found.begin(), found.end(), reading.value) != found.end();
    if (reading.attribute == attribute && !known) found.push_back(reading.value);
  }
  return found;
}

bool Attributes::contradicts(Attribute attribute) const {
  return has_one_value(attribute) && values(attribute).size() > 1;
}

std::optional<std::string_view> Attributes::value(Attribute attribute) const {
  const auto stated = values(attribute);
  if (stated.size() != 1) return std::nullopt;
  return stated.front();
}

}  // namespace rangebook
