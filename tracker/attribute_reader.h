// Reading the cut of a garment from what a shop writes about it.
#pragma once

#include <cstddef>
#include <string_view>

#include "schema/attributes.h"

namespace rangebook {

/// A name or description longer than this is read up to here.
inline constexpr std::size_t kMaxAttributeBytes = std::size_t{16} * 1024;

/// Reads name and description in English, German, French, Spanish, Italian and Dutch by the words
/// of schema/tables/attributes.tsv.
///
/// - Every reading quotes its words and says in which field they stand.
/// - "No pockets", "ohne Taschen", "pockets: none" state that there are none; other negated words
///   ("no zip", "button-free", "instead of buttons") state nothing.
/// - "V-neck or round neck", "long or short sleeves" state both; a name and a description that
/// differ
///   do too. Nothing is chosen: see Attributes::contradicts.
/// - What a sentence says about other things ("team with a striped shirt", "the model wears") and
/// what
///   only looks like an attribute ("sleeve length 62 cm", "pocket square") is left out.
Attributes read_attributes(std::string_view name, std::string_view description);

}  // namespace rangebook
