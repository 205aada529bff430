// What a cell came to, in a few words, for showing beside the cell before anything is kept.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "schema/capture.h"
#include "schema/raw_row.h"

namespace rangebook {

struct CellHints {
  const Shop& shop;
  std::optional<Currency> currency;  ///< of the row
  std::optional<char> decimal;       ///< of the document
};

/// `79.90 EUR`, `8, 10, 12 (uk)`, `sold out`. Empty where the text is kept as it stands; begins
/// with `refused:` where the cell cannot be read. The same readings as the normaliser's, of this
/// cell alone.
std::string cell_words(Field field, std::string_view text, const CellHints& hints);

}  // namespace rangebook
