// Seeded random snapshots of a small shop, for checking laws that hold for any range.
#pragma once

#include <charconv>
#include <cstdlib>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "schema/snapshot.h"

namespace rangebook::testing {

/// Seed of a property test: RANGEBOOK_SEED if set, else `fixed`.
inline std::uint64_t seed_or(std::uint64_t fixed) {
  const char* const text = std::getenv("RANGEBOOK_SEED");
  if (text == nullptr) return fixed;
  const std::string_view digits(text);
  std::from_chars(digits.data(), digits.data() + digits.size(), fixed);
  return fixed;
}

class Random {
 public:
  explicit Random(std::uint64_t seed) : generator_(seed) {}
  std::size_t below(std::size_t bound) { return generator_() % bound; }
  bool one_in(std::size_t n) { return below(n) == 0; }
  std::string one_of(const std::vector<std::string>& choices) {
    return choices[below(choices.size())];
  }
  /// At least one of `choices`, in their order.
  std::vector<std::string> some_of(const std::vector<std::string>& choices) {
    std::vector<std::string> some;
    for (const std::string& choice : choices) {
      if (below(3) != 0) some.push_back(choice);
    }
    return some.empty() ? std::vector<std::string>{one_of(choices)} : some;
  }
  template <typename T>
  void shuffle(std::vector<T>& items) {
    for (std::size_t i = items.size(); i > 1; --i) std::swap(items[i - 1], items[below(i)]);
  }

 private:
  std::mt19937_64 generator_;
};

inline Offer random_offer(Random& random, MinorUnits usual, Stock usual_stock) {
  Offer offer;
  offer.price = random.one_in(4) ? usual + 500 : usual;
  if (random.one_in(4)) {
    offer.full_price = *offer.price + 1000;
  } else if (random.one_in(9)) {
    offer.price = std::nullopt;
  }
  offer.stock = random.one_in(8)   ? Stock::unknown
                : random.one_in(4) ? Stock::sold_out
                                   : usual_stock;
  return offer;
}

inline LineOffers random_offers(Random& random) {
  static const std::vector<std::string> kColours{"black", "ecru", "moss", "navy"};
  static const std::vector<std::string> kSizes{
      "10", "12", "14", "16", "18", "20", "10 Petite", "12 Petite", "6", "8", "8 Petite"};
  LineOffers offers;
  offers.currency = Currency::from_code("EUR");
  offers.colours = random.some_of(kColours);
  offers.sizes = random.some_of(kSizes);
  std::sort(offers.sizes.begin(), offers.sizes.end());
  const MinorUnits usual = 3000 + static_cast<MinorUnits>(random.below(4)) * 500;
  const Stock usual_stock = random.one_in(4) ? Stock::sold_out : Stock::in_stock;
  for (std::uint16_t colour = 0; colour < offers.colours.size(); ++colour) {
    for (std::uint16_t size = 0; size < offers.sizes.size(); ++size) {
      Offer offer = random_offer(random, usual, usual_stock);
      offer.colour = colour;
      offer.size = size;
      // The first colour and the first size are whole, so that every label is in use.
      if (colour == 0 || size == 0 || !random.one_in(6)) offers.offers.push_back(offer);
    }
  }
  return offers;
}

/// Lines with codes L0 .. L7, each present or not. The same code always has the same id.
inline Snapshot random_range(Random& random, std::int64_t capture) {
  static const std::vector<std::string> kNames{"Maya", "Ines", "Ada"};
  static const std::vector<std::string> kCategories{"Dresses", "Knitwear", "Tops", ""};
  static const std::vector<std::string> kCloth{"100% cotton", "100% wool", "soft", ""};
  Snapshot snapshot;
  snapshot.shop.sizes = SizeSystem::uk;
  snapshot.capture.id = capture;
  snapshot.capture.season = "C" + std::to_string(capture);
  for (LineId id = 0; id < 8; ++id) {
    if (random.one_in(4)) continue;
    LineState line;
    line.id = id;
    line.listing.card.line_code = "L" + std::to_string(id);
    line.listing.card.name = random.one_of(kNames);
    line.listing.card.category = random.one_of(kCategories);
    line.listing.card.composition = random.one_of(kCloth);
    line.listing.offers = random_offers(random);
    line.listing.origin.line = static_cast<std::uint64_t>(id) + 1;
    snapshot.lines.push_back(std::move(line));
  }
  return snapshot;
}

inline Scope random_scope(Random& random) {
  static const std::vector<std::string> kSlugs{"dresses", "knitwear", "tops"};
  if (random.one_in(3)) return {Scope::Kind::all, {}};
  if (random.one_in(4)) return {Scope::Kind::picks, {}};
  return {Scope::Kind::categories, random.some_of(kSlugs)};
}

/// Sizes of other systems, whose meaning hangs on the labels beside them.
inline void mix_sizes(Random& random, Snapshot& snapshot) {
  static const std::vector<std::vector<std::string>> kSets{
      {"32", "34", "36", "38", "40"}, {"0", "2", "4", "6"},       {"L", "M", "S", "XL"},
      {"16", "20", "24", "28", "32"}, {"36", "37", "38", "38.5"}, {"One size"},
      {"12", "14", "blorp"},          {"36", "38", "40", "42"}};
  for (LineState& line : snapshot.lines) {
    if (!random.one_in(2)) continue;
    LineOffers& offers = line.listing.offers;
    offers.sizes = random.some_of(kSets[random.below(kSets.size())]);
    std::sort(offers.sizes.begin(), offers.sizes.end());
    offers.offers.clear();
    for (std::uint16_t colour = 0; colour < offers.colours.size(); ++colour) {
      for (std::uint16_t size = 0; size < offers.sizes.size(); ++size) {
        Offer offer = random_offer(random, 3000, Stock::in_stock);
        offer.colour = colour;
        offer.size = size;
        offers.offers.push_back(offer);
      }
    }
  }
}

/// The cheapest offer as a listing page shows it: one price for the line, perhaps without the price
/// it was, and neither colours nor sizes.
inline LineOffers listed_offers(Random& random, const LineOffers& offers) {
  LineOffers listed;
  listed.currency = offers.currency;
  listed.colours = {""};
  listed.sizes = {""};
  Offer row;
  for (const Offer& offer : offers.offers) {
    if (offer.price && (!row.price || *offer.price < *row.price)) row = offer;
  }
  row.colour = row.size = 0;
  row.stock = Stock::unknown;
  if (random.one_in(5)) row.price.reset();
  if (!row.price) row.full_price.reset();
  listed.offers = {row};
  return listed;
}

/// What a less careful look at the same range gives: some lines as a listing page shows them, some
/// without composition, some not at all, because their row was refused.
inline Snapshot less_detailed(Random& random, const Snapshot& range) {
  Snapshot seen = range;
  const bool full_prices = random.one_in(2);
  for (LineState& line : seen.lines) {
    if (random.one_in(2)) {
      line.listing.offers = listed_offers(random, line.listing.offers);
    }
    if (random.one_in(3)) line.listing.card.composition.clear();
    if (random.one_in(3)) line.listing.card.category.clear();
  }
  for (LineState& line : seen.lines) {
    for (Offer& offer : line.listing.offers.offers) {
      if (!full_prices) offer.full_price.reset();
    }
  }
  std::erase_if(seen.lines, [&](const LineState& line) {
    if (!random.one_in(6)) return false;
    seen.refused.push_back({line.listing.card.line_code, line.listing.card.name});
    return true;
  });
  return seen;
}

}  // namespace rangebook::testing
