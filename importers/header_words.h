// What the name of a column means, in six languages: schema/tables/fields.tsv.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "schema/raw_row.h"

namespace rangebook {

/// Most columns hold one field; two kinds of column need a closer look.
enum class ColumnRole : std::uint8_t {
  field,
  sale_price,   ///< the price where it is filled; beside it, `price` is the full price
  colour_size,  ///< both in one cell: `Navy / 12`
};

struct ColumnMeaning {
  ColumnRole role = ColumnRole::field;
  Field field = Field::name;
  bool by_contract = false;  ///< the header is the contract's own name of the field
  std::string currency;      ///< ISO code that a price column states: `Price (EUR)`; else empty
};

/// What a header means; nothing if it is not known. Case, accents, signs between words, and units
/// in brackets do not matter.
std::optional<ColumnMeaning> column_meaning(std::string_view header);

/// Lower case without accents, words joined by `_`: how headers are compared. `Größe` -> `grosse`.
std::string folded_header(std::string_view header);

}  // namespace rangebook
