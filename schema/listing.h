// A listing: one line as a capture shows it, all its colourways and sizes together. The texts stay
// verbatim; what they mean is worked out when they are read, so a better parser improves old
// captures too.
#pragma once

#include <compare>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "schema/compact_optional.h"
#include "schema/gtin.h"
#include "schema/money.h"
#include "schema/raw_row.h"

namespace rangebook {

/// What identifies and describes a line in a sentence. Empty text means: not stated.
struct LineCard {
  std::string line_code;
  std::string group_id;
  std::string name;
  std::string category;     ///< as the source words it
  std::string composition;  ///< as the source words it
  std::string url;

  bool operator==(const LineCard&) const = default;
};

/// Long texts that only linking by likeness and an export need.
struct LineDetail {
  std::string description;
  std::string image;

  bool operator==(const LineDetail&) const = default;
};

enum class Stock : std::uint8_t { unknown, in_stock, sold_out };

/// A price that may not be stated.
using OptionalPrice = CompactOptional<MinorUnits, std::numeric_limits<MinorUnits>::min()>;

/// One variant: colour x size. Prices in minor units of the listing's currency.
struct Offer {
  std::uint16_t colour = 0;  ///< index into LineOffers::colours
  std::uint16_t size = 0;    ///< index into LineOffers::sizes
  Stock stock = Stock::unknown;
  OptionalPrice price;       ///< what it sells for
  OptionalPrice full_price;  ///< what it sold for before a markdown, where stated

  bool operator==(const Offer&) const = default;
};

/// All variants of a line. Canonical form: colours and sizes sorted by bytes and without
/// duplicates, offers sorted by (colour, size) and unique; so rows in any order give equal values.
/// An empty colour or size label means: the source does not say.
struct LineOffers {
  std::optional<Currency> currency;  ///< of all prices; absent only when no offer has a price
  std::vector<std::string> colours;
  std::vector<std::string> sizes;
  std::vector<Offer> offers;
  std::vector<OptionalGtin> gtins;         ///< empty, or one per offer
  std::vector<std::string> variant_codes;  ///< empty, or one per offer

  bool operator==(const LineOffers&) const = default;
};

struct Listing {
  LineCard card;
  LineDetail detail;
  LineOffers offers;
  Origin origin;  ///< where the line was first met

  bool same_facts(const Listing& other) const {
    return card == other.card && detail == other.detail && offers == other.offers;
  }
};

/// The price a variant has without a markdown: the full price where stated, else the price.
inline std::optional<MinorUnits> undiscounted(const Offer& offer) {
  return offer.full_price ? offer.full_price : offer.price;
}
/// True when a full price is stated and the selling price is below it.
inline bool is_marked_down(const Offer& offer) {
  return offer.price && offer.full_price && *offer.price < *offer.full_price;
}

}  // namespace rangebook
