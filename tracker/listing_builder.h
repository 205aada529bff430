// Putting the rows of one line together into a listing in canonical form, whatever their order.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "schema/listing.h"

namespace rangebook {

/// A line with more variants than this is refused row by row: no style has them, and a mistaken
/// line code must not make one listing of a whole range.
inline constexpr std::size_t kMaxVariants = 20'000;

/// One variant's facts, before it has a place in a listing.
struct VariantFacts {
  std::string_view colour;  ///< empty: not stated
  std::string_view size;    ///< empty: not stated
  Stock stock = Stock::unknown;
  std::optional<MinorUnits> price;
  std::optional<MinorUnits> full_price;
  std::optional<Gtin> gtin;
  std::string_view variant_code;
};

class ListingBuilder {
 public:
  enum class Outcome : std::uint8_t {
    added,
    merged,          ///< the variant was there; facts it lacked were filled in
    conflict,        ///< the variant was there with another price, stock, GTIN or code
    other_currency,  ///< the line's prices are in another currency
    too_many,        ///< kMaxVariants
  };

  /// Forgets everything.
  void clear();
  bool empty() const { return listing_.offers.offers.empty(); }

  /// Texts of the line. A text that is already there wins.
  LineCard& card() { return listing_.card; }
  LineDetail& detail() { return listing_.detail; }
  Origin& origin() { return listing_.origin; }
  const Listing& so_far() const { return listing_; }

  /// Adds a variant; nothing changes unless the outcome is `added` or `merged`.
  Outcome add(const VariantFacts& facts, std::optional<Currency> currency);
  /// Adds everything of a listing of the same line; the first outcome that refuses, else `added`.
  Outcome add_all(const Listing& other);
  /// The variant already there for this colour and size; null if none.
  const Offer* find(std::string_view colour, std::string_view size) const;

  /// The listing in canonical form (see LineOffers). The builder is empty afterwards.
  Listing build();

 private:
  Outcome merge(std::size_t index, const VariantFacts& facts);
  std::optional<std::size_t> index_of(std::uint16_t colour, std::uint16_t size) const;
  void append(const VariantFacts& facts, std::uint16_t colour, std::uint16_t size);

  Listing listing_;
  std::unordered_map<std::uint32_t, std::size_t> places_;  ///< used above kLinearVariants
};

}  // namespace rangebook
