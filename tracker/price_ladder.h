// The price ladder of a category: entry price, quartiles, top.
#pragma once

#include <map>
#include <span>
#include <vector>

#include "schema/change.h"
#include "schema/listing.h"

namespace rangebook {

/// The `quarter`-th quartile (0 lowest, 4 highest) of prices in ascending order, at least one, by
/// linear interpolation between ranks (Hyndman & Fan 1996, type 7), in whole minor units rounded
/// half up.
MinorUnits quartile(std::span<const MinorUnits> ascending, unsigned quarter);

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
    std::uint32_t marked_down = 0;
  };
  std::map<Currency, Prices> by_currency_;
};

}  // namespace rangebook
