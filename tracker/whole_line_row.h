// A row that names neither colour nor size is about its line as a whole: a listing page shows a
// line so. Beside rows of variants it says nothing that they do not, and must not make the sizes
// and colours they state look incomplete.
#pragma once

#include <optional>

#include "schema/listing.h"

namespace rangebook {

/// The offers without such a row; nothing where there is none, where it is all there is, or where
/// only it states a price or the stock.
std::optional<LineOffers> without_whole_line_row(const LineOffers& offers);

}  // namespace rangebook
