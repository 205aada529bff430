// Changes of a line's prices, like for like: variant by variant, full prices apart from markdowns.
#pragma once

#include <optional>

#include "schema/money.h"
#include "tracker/coverage.h"
#include "tracker/interpreter.h"
#include "tracker/line_pair.h"
#include "tracker/price_index.h"

namespace rangebook {

/// A line's part in a price index.
struct LineIndexPrices {
  Currency currency;
  PricePair prices;  ///< lowest undiscounted price over the variants both captures price
};

/// Emits price-up and price-down (undiscounted prices) and marked-down, markdown-changed and
/// markdown-ended, one change for each distinct pair of prices and each group of variants that
/// lists of colours and sizes can name exactly. Where no variant is common, a line with one price
/// for all its variants in each capture is compared as a whole; otherwise only its lowest
/// undiscounted prices are, and nothing where one side has no variants at all. Returns what the
/// line adds to an index, nothing if that is not like for like.
std::optional<LineIndexPrices> diff_prices(const LinePair& pair, Interpreter& interpreter,
                                           PairChanges& changes, SilenceLog& silences);

/// The index prices of a line whose offers are the same in both captures.
std::optional<LineIndexPrices> unchanged_prices(const LineOffers& offers);

}  // namespace rangebook
