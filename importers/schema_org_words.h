// The words of schema.org product properties: sizes, colours, materials, categories, pictures.
#pragma once

#include <string>
#include <string_view>

#include "importers/json_ld.h"

namespace rangebook {

/// Text as a cell holds it: character references replaced (pages write `&amp;` into JSON too),
/// runs of white space and control characters as one space, none at the ends.
std::string clean_text(std::string_view text);

/// The cell of a property whose values are words or named things, the first that has some.
std::string word_cell(const LinkedData& data, JsonId thing, std::string_view property);

/// `size`: text, or SizeSpecification as `UK 12 Petite`: the system before a bare number, the
/// group after it. Several sizes are listed with "|" for a thing that is a whole line, since then
/// they are what it comes in. One variant with several labels (UK 12, EU 40) has the first.
std::string size_cell(const LinkedData& data, JsonId thing, bool whole_line);

/// `color`: text, or a named thing. Several: listed with "|" for a whole line, else one garment in
/// several colours, joined with " / ".
std::string colour_cell(const LinkedData& data, JsonId thing, bool whole_line);

/// `material`, all values joined with ", "; else the additional property that holds it.
std::string composition_cell(const LinkedData& data, JsonId thing);

/// `category`: text, a named thing or a CategoryCode.
std::string category_cell(const LinkedData& data, JsonId thing);

/// The address of the first `image`: text or ImageObject.
std::string_view image_address(const LinkedData& data, JsonId thing);

/// The value of the first additionalProperty (PropertyValue) with one of two names, in any case.
std::string additional_cell(const LinkedData& data, JsonId thing, std::string_view name,
                            std::string_view other_name);

}  // namespace rangebook
