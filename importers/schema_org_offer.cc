// Reading offers: which of the prices on a page is the one to pay.
#include "importers/schema_org_offer.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "importers/html_tag.h"
#include "importers/schema_org_words.h"

namespace rangebook {
namespace {

// schema.org ItemAvailability, all members.
constexpr auto kAvailability = std::to_array<std::string_view>(
    {"BackOrder", "Discontinued", "InStock", "InStoreOnly", "LimitedAvailability", "MadeToOrder",
     "OnlineOnly", "OutOfStock", "PreOrder", "PreSale", "Reserved", "SoldOut"});

enum class PriceRole : std::uint8_t { none, selling, recommended, list, regular, strikethrough };

// schema.org PriceTypeEnumeration; a price without a type is what it sells for.
PriceRole role_of(std::string_view type) {
  const auto is = [&](std::string_view name) { return equals_ignoring_case(type, name); };
  if (type.empty() || is("SalePrice")) return PriceRole::selling;
  if (is("StrikethroughPrice")) return PriceRole::strikethrough;
  if (is("RegularPrice")) return PriceRole::regular;
  if (is("ListPrice")) return PriceRole::list;
  if (is("SRP") || is("MSRP")) return PriceRole::recommended;
  return PriceRole::none;
}

std::string_view enumeration_name(const LinkedData& data, JsonId thing, std::string_view property) {
  const JsonId value = data.first(thing, property);
  if (value == 0) return {};
  const auto words = data.text(value);
  return schema_org_name(words.empty() ? data.id(value) : words);
}

std::string price_text(const LinkedData& data, JsonId value) {
  if (data.node(value).kind == JsonKind::number) return plain_number(data.node(value).text);
  return clean_text(data.text(value));
}

// "30", "30.0" and "30.00" are one price.
std::string_view without_zeros(std::string_view price) {
  if (price.find('.') == price.npos || price.find(',') != price.npos) return price;
  while (price.back() == '0') price.remove_suffix(1);
  if (price.back() == '.') price.remove_suffix(1);
  return price;
}

bool same_price(std::string_view a, std::string_view b) {
  return without_zeros(a) == without_zeros(b);
}

// More than one is a doubt already; so many are shown.
constexpr std::size_t kMaxPrices = 4;

// The prices that an offer states, by what they are.
struct Prices {
  std::vector<std::string> selling;
  std::string full;
  PriceRole full_role = PriceRole::none;
  std::string currency;

  void add(PriceRole role, std::string price) {
    if (price.empty() || role == PriceRole::none) return;
    if (role == PriceRole::selling) {
      if (selling.size() == kMaxPrices) return;
      const bool known = std::any_of(selling.begin(), selling.end(),
                                     [&](const auto& other) { return same_price(other, price); });
      if (!known) selling.push_back(std::move(price));
    } else if (role > full_role) {
      full = std::move(price);
      full_role = role;
    }
  }
};

// UN/CEFACT Recommendation 20: one, piece, each; from memory.
bool is_piece(std::string_view unit) {
  return unit.empty() || unit == "C62" || unit == "H87" || unit == "EA";
}

// A price per kilogram, per metre, per year: a reference quantity other than one piece.
bool is_per_measure(const LinkedData& data, JsonId specification) {
  const JsonId quantity = data.first(specification, "referenceQuantity");
  if (quantity == 0) return !is_piece(data.text(specification, "unitCode"));
  const auto value = data.text(quantity, "value");
  return !is_piece(data.text(quantity, "unitCode")) || !(value.empty() || value == "1");
}

bool is_one(std::string_view written) {
  const auto count = written.empty() ? written : without_zeros(written);
  return count.empty() || count == "0" || count == "1";
}

// A price that holds only from several pieces on.
bool is_for_quantity(const LinkedData& data, JsonId specification) {
  const JsonId quantity = data.first(specification, "eligibleQuantity");
  if (quantity == 0) return false;
  if (!data.is_object(quantity)) return !is_one(data.text(quantity));
  return !is_one(data.text(quantity, "minValue")) || !is_one(data.text(quantity, "value"));
}

// Not what everyone pays for one piece.
bool is_special(const LinkedData& data, JsonId specification) {
  return data.first(specification, "validForMemberTier") != 0 ||
         is_for_quantity(data, specification) ||
         data.is_a(specification, "DeliveryChargeSpecification") ||
         data.is_a(specification, "PaymentChargeSpecification") ||
         is_per_measure(data, specification);
}

std::string currency_of(const LinkedData& data, JsonId thing) {
  return word_cell(data, thing, "priceCurrency");
}

void add_specification(const LinkedData& data, JsonId specification, Prices& prices) {
  if (!data.is_object(specification) || is_special(data, specification)) return;
  const PriceRole role = role_of(enumeration_name(data, specification, "priceType"));
  for (const JsonId price : data.values(specification, "price")) {
    prices.add(role, price_text(data, price));
  }
  if (prices.currency.empty()) prices.currency = currency_of(data, specification);
}

Prices prices_of(const LinkedData& data, JsonId offer) {
  Prices prices;
  prices.currency = currency_of(data, offer);
  for (const JsonId price : data.values(offer, "price")) {
    prices.add(PriceRole::selling, price_text(data, price));
  }
  for (const JsonId specification : data.values(offer, "priceSpecification")) {
    add_specification(data, specification, prices);
  }
  if (prices.selling.empty() && prices.full_role == PriceRole::regular) {
    prices.selling.push_back(std::exchange(prices.full, {}));
    prices.full_role = PriceRole::none;
  }
  return prices;
}

bool has_price(const LinkedData& data, JsonId offer) {
  const Prices prices = prices_of(data, offer);
  return !prices.selling.empty() || !prices.full.empty();
}

bool is_aggregate(const LinkedData& data, JsonId offer) {
  return data.is_a(offer, "AggregateOffer") || data.first(offer, "lowPrice") != 0;
}

constexpr std::string_view kTypeItIn =
    "Type the price of each variant into a CSV, or save the page with the variant chosen.";

// The end of a range: of an AggregateOffer, else of a PriceSpecification.
JsonId range_end(const LinkedData& data, JsonId offer, std::string_view of_offer,
                 std::string_view of_specification) {
  const JsonId stated = data.first(offer, of_offer);
  if (stated != 0) return stated;
  for (const JsonId specification : data.values(offer, "priceSpecification")) {
    if (!data.is_object(specification) || is_special(data, specification)) continue;
    const JsonId end = data.first(specification, of_specification);
    if (end != 0) return end;
  }
  return 0;
}

void doubt_range(const LinkedData& data, JsonId offer, OfferFacts& facts) {
  const JsonId low_value = range_end(data, offer, "lowPrice", "minPrice");
  const JsonId high_value = range_end(data, offer, "highPrice", "maxPrice");
  if (low_value == 0 && high_value == 0) return;
  const std::string low = low_value == 0 ? "" : price_text(data, low_value);
  const std::string high = high_value == 0 ? "" : price_text(data, high_value);
  const bool one_offer = data.text(offer, "offerCount") == "1";
  if (same_price(low, high) || (high.empty() && one_offer)) {
    facts.price = low;
    return;
  }
  std::string range = low.empty() ? "up to " + high : "from " + low;
  if (!low.empty() && !high.empty()) range += " to " + high;
  facts.doubt = {"The page states a price range (" + range + "), not the price of a variant.",
                 std::string(kTypeItIn), range};
}

void take_prices(Prices prices, OfferFacts& facts) {
  facts.currency = std::move(prices.currency);
  facts.full_price = std::move(prices.full);
  if (prices.selling.size() == 1) facts.price = std::move(prices.selling.front());
  if (prices.selling.empty() && !facts.full_price.empty()) {
    facts.doubt = {"The page states a list price, but not what it sells for.",
                   std::string(kTypeItIn), facts.full_price};
  }
  if (prices.selling.size() < 2) return;
  std::string all;
  for (const auto& price : prices.selling) all += (all.empty() ? "" : " and ") + price;
  facts.doubt = {"The page states several prices for one offer: " + all + ".",
                 std::string(kTypeItIn), all};
}

// An offer to lease, repair or buy back has no price that a sale could be compared with.
void doubt_other_business(const LinkedData& data, JsonId offer, OfferFacts& facts) {
  const auto function = enumeration_name(data, offer, "businessFunction");
  const auto word = function.substr(function.find_last_of("#/") + 1);
  if (word.empty() || equals_ignoring_case(word, "Sell") || facts.price.empty()) return;
  facts.doubt = {"The price is for \"" + std::string(word) + "\", not for a sale.",
                 "Leave the price out, or type the selling price into a CSV.", facts.price};
  facts.price.clear();
  facts.full_price.clear();
}

// A level with a least number has that many at least; nothing else is known of one that has none.
std::string level_of(const LinkedData& data, JsonId level) {
  std::string value = word_cell(data, level, "value");
  if (value.empty()) value = word_cell(data, level, "minValue");
  const std::string most = word_cell(data, level, "maxValue");
  if (!value.empty()) value = without_zeros(value);
  const bool stated = data.first(level, "value") != 0;
  if (stated || (!value.empty() && value != "0")) return value;
  return !most.empty() && without_zeros(most) == "0" ? "0" : "";
}

std::string stock_of(const LinkedData& data, JsonId offer) {
  const JsonId availability = data.first(offer, "availability");
  if (availability != 0) {
    const auto words = data.text(availability);
    return availability_word(words.empty() ? data.id(availability) : words);
  }
  const JsonId level = data.first(offer, "inventoryLevel");
  if (level == 0) return {};
  return data.is_object(level) ? level_of(data, level) : clean_text(data.text(level));
}

// "1.5e3" is digits "15" with the point behind `point` of them.
std::string place_point(std::string digits, std::int64_t point) {
  constexpr std::int64_t kMostZeros = 18;
  const auto size = static_cast<std::int64_t>(digits.size());
  if (point < -kMostZeros || point > size + kMostZeros) return {};
  if (point <= 0) return "0." + std::string(static_cast<std::size_t>(-point), '0') + digits;
  if (point >= size) return digits + std::string(static_cast<std::size_t>(point - size), '0');
  return digits.insert(static_cast<std::size_t>(point), ".");
}

std::string without_exponent(std::string_view written) {
  const auto e = written.find_first_of("eE");
  if (e == written.npos) return std::string(written);
  std::string_view mantissa = written.substr(0, e);
  std::string_view exponent = written.substr(e + 1);
  if (exponent.starts_with('+')) exponent.remove_prefix(1);
  std::int64_t shift = 0;
  const auto end = exponent.data() + exponent.size();
  if (std::from_chars(exponent.data(), end, shift).ec != std::errc{}) return std::string(written);
  const bool negative = mantissa.starts_with('-');
  if (negative) mantissa.remove_prefix(1);
  const auto point = std::min(mantissa.find('.'), mantissa.size());
  std::string digits(mantissa.substr(0, point));
  if (point < mantissa.size()) digits += mantissa.substr(point + 1);
  if (shift > 1000 || shift < -1000) return std::string(written);
  std::string plain = place_point(digits, static_cast<std::int64_t>(point) + shift);
  if (plain.empty()) return std::string(written);
  return (negative ? "-" : "") + plain;
}

}  // namespace

std::string plain_number(std::string_view written) {
  std::string number = without_exponent(written);
  const auto point = number.find('.');
  if (point == number.npos) return number;
  constexpr std::size_t kUsual = 2;
  while (number.size() - point - 1 > kUsual && number.back() == '0') number.pop_back();
  if (number.size() - point - 1 == 3) number += '0';
  return number;
}

std::string availability_word(std::string_view text) {
  std::string words = clean_text(text);
  std::string bare;
  for (const char c : std::string_view(words).substr(words.find_last_of("/#:") + 1)) {
    if (c != ' ' && c != '-' && c != '_') bare += c;
  }
  for (const auto member : kAvailability) {
    if (equals_ignoring_case(bare, member)) return std::string(member);
  }
  return words;
}

std::vector<OfferPlace> offers_of(const LinkedData& data, JsonId thing) {
  std::vector<OfferPlace> places;
  for (const JsonId offer : data.values(thing, "offers")) {
    const JsonId at = data.resolve(offer);
    if (!data.is_object(at)) continue;
    const auto inside = is_aggregate(data, at) ? data.values(at, "offers") : std::vector<JsonId>{};
    const bool priced = std::any_of(inside.begin(), inside.end(),
                                    [&](JsonId inner) { return has_price(data, inner); });
    if (!priced) places.push_back({.offer = at});
    for (const JsonId inner : inside) {
      if (priced) places.push_back({.offer = inner, .aggregate = at});
    }
  }
  return places;
}

OfferFacts read_offer(const LinkedData& data, const OfferPlace& place) {
  OfferFacts facts;
  take_prices(prices_of(data, place.offer), facts);
  if (facts.price.empty() && !facts.doubt) doubt_range(data, place.offer, facts);
  doubt_other_business(data, place.offer, facts);
  if (facts.currency.empty() && place.aggregate != 0) {
    facts.currency = currency_of(data, place.aggregate);
  }
  facts.in_stock = stock_of(data, place.offer);
  if (facts.in_stock.empty() && place.aggregate != 0) {
    facts.in_stock = stock_of(data, place.aggregate);
  }
  return facts;
}

}  // namespace rangebook
