// What the columns of a table without a header mean, told by their content.
#pragma once

#include <cstddef>
#include <span>

#include "importers/field_map.h"
#include "importers/table_header.h"

namespace rangebook {

/// Fewer rows prove nothing.
inline constexpr std::size_t kMinGuessRows = 3;

/// Guesses from the first rows: addresses and pictures by their form, GTINs by their check digit,
/// currencies by their code, prices by their decimals, sizes and stock by their words, composition
/// by percentages, codes by being short and without blanks, names by being the text with most
/// variety. Of two columns of prices the one that is never lower is the full price; of more, or of
/// two that cross, none is taken: a price from the wrong column is worse than none. Without a name
/// there is no map. What `chosen` has stays, and its chosen columns are left alone.
FieldMap guess_columns(std::span<const KeptRecord> records, std::size_t columns,
                       const FieldMap& chosen = {});

}  // namespace rangebook
