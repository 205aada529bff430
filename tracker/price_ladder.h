// The price ladder of a category: entry price, quartiles, top.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <vector>

#include "schema/change.h"
#include "schema/listing.h"

namespace rangebook {

/// The `quarter`-th quartile (0 lowest, 4 highest) of prices in ascending order, at least one, by
/// linear interpolation between ranks (Hyndman & Fan 1996, type 7), in whole minor units rounded
/// half up. Type 7 because it is what QUARTILE.INC of a spreadsheet gives, so anyone can check it.
MinorUnits quartile(std::span<const MinorUnits> ascending, unsigned quarter);

/// How far below its full price the deepest markdown of the line is, in tenths of a percent rounded
/// half up; nothing if no variant is marked down.
std::optional<std::uint32_t> markdown_depth(const LineOffers& offers);

/// Collects one price a line, by currency.
class LadderTally {
 public:
  /// Adds the line's lowest selling price; a line without a price adds nothing.
  void add(const LineOffers& offers);
  void merge(const LadderTally& other);
  /// In the order of currencies.
  std::vector<PriceLadder> ladders() const;

 private:
  struct Prices {
    std::vector<MinorUnits> lowest;
    std::vector<MinorUnits> depths;  // of lines marked down, in tenths of a percent
  };
  std::map<Currency, Prices> by_currency_;
};

}  // namespace rangebook
