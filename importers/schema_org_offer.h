// What a schema.org Offer or AggregateOffer says: price, price before a markdown, currency,
// availability. A price that is not certain is not given; the doubt is put into words instead.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "importers/json_ld.h"

namespace rangebook {

/// Why an offer's price was left out.
struct PriceDoubt {
  std::string what;        ///< one sentence
  std::string how_to_fix;  ///< one sentence
  std::string excerpt;     ///< the prices in question
};

struct OfferFacts {
  std::string price;       ///< as written; a JSON number in plain decimals
  std::string full_price;  ///< a list, regular, strike-through or recommended price
  std::string currency;    ///< as written, usually an ISO 4217 code
  std::string in_stock;    ///< the member of ItemAvailability, such as `SoldOut`; else as written
  std::optional<PriceDoubt> doubt;
};

/// An offer to read, and the AggregateOffer around it, which may hold the currency (0 if none).
struct OfferPlace {
  JsonId offer = 0;
  JsonId aggregate = 0;
};

/// The offers of a thing in order. An AggregateOffer stands for the offers inside it, unless none
/// of them has a price: then only the range is known, and it stands for itself.
std::vector<OfferPlace> offers_of(const LinkedData& data, JsonId thing);

/// Reads one offer. Left out with a doubt: a range (`lowPrice` below `highPrice`, or a lone
/// `lowPrice`), several different prices, a list price without a selling price, and what is no
/// sale (`businessFunction` lease). Prices for members, for quantities and per unit of measure, and
/// charges for delivery are not prices of the thing.
OfferFacts read_offer(const LinkedData& data, const OfferPlace& place);

/// The member of schema.org's ItemAvailability that a text means (`http://schema.org/InStock`,
/// `in stock`, `out_of_stock`); the text itself when it means none.
std::string availability_word(std::string_view text);

/// A JSON number in plain decimals that cannot be mistaken for one with thousands separators:
/// `49.90` stays, `4.99e1` is `49.9`, `49.900` is `49.90`, `1.299` is `1.2990`.
std::string plain_number(std::string_view written);

}  // namespace rangebook
