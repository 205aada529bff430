// Variants are collected in order of appearance and sorted once, when the listing is complete.
#include "tracker/listing_builder.h"

#include <algorithm>
#include <numeric>
#include <vector>

namespace rangebook {
namespace {

/// Up to so many variants a look through the list is faster than a hash table.
constexpr std::size_t kLinearVariants = 64;

std::uint32_t place(std::uint16_t colour, std::uint16_t size) {
  return (std::uint32_t{colour} << 16U) | size;
}

std::optional<std::uint16_t> find_label(const std::vector<std::string>& labels,
                                        std::string_view label) {
  for (std::size_t i = labels.size(); i-- > 0;) {  // the latest is the likeliest
    if (labels[i] == label) return static_cast<std::uint16_t>(i);
  }
  return std::nullopt;
}

std::uint16_t find_or_add(std::vector<std::string>& labels, std::string_view label) {
  if (const auto found = find_label(labels, label)) return *found;
  labels.emplace_back(label);
  return static_cast<std::uint16_t>(labels.size() - 1);
}

bool contradicts(const OptionalPrice& a, const OptionalPrice& b) { return a && b && *a != *b; }

bool gtin_contradicts(const LineOffers& line, std::size_t index, const std::optional<Gtin>& other) {
  if (line.gtins.empty() || !other) return false;
  const OptionalGtin gtin = line.gtins[index];
  return gtin.has_value() && *gtin != *other;
}

void fill(std::string& text, const std::string& other) {
  if (text.empty()) text = other;
}

/// Sorts labels by bytes; returns for each old index the new one.
std::vector<std::uint16_t> sort_labels(std::vector<std::string>& labels) {
  std::vector<std::uint16_t> order(labels.size());
  std::iota(order.begin(), order.end(), std::uint16_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::uint16_t a, std::uint16_t b) { return labels[a] < labels[b]; });
  std::vector<std::uint16_t> new_index(labels.size());
  std::vector<std::string> sorted(labels.size());
  for (std::size_t i = 0; i < order.size(); ++i) {
    new_index[order[i]] = static_cast<std::uint16_t>(i);
    sorted[i] = std::move(labels[order[i]]);
  }
  labels = std::move(sorted);
  return new_index;
}

template <typename T>
void reorder(std::vector<T>& values, const std::vector<std::size_t>& order) {
  if (values.empty()) return;
  std::vector<T> sorted;
  sorted.reserve(order.size());
  for (const std::size_t from : order) sorted.push_back(std::move(values[from]));
  values = std::move(sorted);
}

void sort_offers(LineOffers& line) {
  const auto colours = sort_labels(line.colours);
  const auto sizes = sort_labels(line.sizes);
  for (auto& offer : line.offers) {
    offer.colour = colours[offer.colour];
    offer.size = sizes[offer.size];
  }
  const auto key = [](const Offer& offer) { return place(offer.colour, offer.size); };
  const auto less = [&](const Offer& a, const Offer& b) { return key(a) < key(b); };
  if (std::is_sorted(line.offers.begin(), line.offers.end(), less)) return;
  std::vector<std::size_t> order(line.offers.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return less(line.offers[a], line.offers[b]); });
  reorder(line.offers, order);
  reorder(line.gtins, order);
  reorder(line.variant_codes, order);
}

}  // namespace

void ListingBuilder::clear() {
  listing_ = Listing{};
  places_.clear();
}

std::optional<std::size_t> ListingBuilder::index_of(std::uint16_t colour,
                                                    std::uint16_t size) const {
  const auto& offers = listing_.offers.offers;
  if (offers.size() > kLinearVariants) {
    const auto found = places_.find(place(colour, size));
    return found == places_.end() ? std::nullopt : std::optional(found->second);
  }
  for (std::size_t i = offers.size(); i-- > 0;) {
    if (offers[i].colour == colour && offers[i].size == size) return i;
  }
  return std::nullopt;
}

const Offer* ListingBuilder::find(std::string_view colour, std::string_view size) const {
  const auto colour_index = find_label(listing_.offers.colours, colour);
  const auto size_index = find_label(listing_.offers.sizes, size);
  if (!colour_index || !size_index) return nullptr;
  const auto index = index_of(*colour_index, *size_index);
  return index ? &listing_.offers.offers[*index] : nullptr;
}

ListingBuilder::Outcome ListingBuilder::add(const VariantFacts& facts,
                                            std::optional<Currency> currency) {
  auto& line = listing_.offers;
  const bool priced = facts.price || facts.full_price;
  if (priced && line.currency && currency != line.currency) return Outcome::other_currency;
  if (line.offers.size() >= kMaxVariants) return Outcome::too_many;
  const std::uint16_t colour = find_or_add(line.colours, facts.colour);
  const std::uint16_t size = find_or_add(line.sizes, facts.size);
  const auto index = index_of(colour, size);
  const Outcome outcome = index ? merge(*index, facts) : Outcome::added;
  if (!index) append(facts, colour, size);
  if (priced && outcome != Outcome::conflict) line.currency = currency;
  return outcome;
}

void ListingBuilder::append(const VariantFacts& facts, std::uint16_t colour, std::uint16_t size) {
  auto& line = listing_.offers;
  line.offers.push_back({colour, size, facts.stock, facts.price, facts.full_price});
  if (facts.gtin || !line.gtins.empty()) {
    line.gtins.resize(line.offers.size());
    line.gtins.back() = facts.gtin;
  }
  if (!facts.variant_code.empty() || !line.variant_codes.empty()) {
    line.variant_codes.resize(line.offers.size());
    line.variant_codes.back() = facts.variant_code;
  }
  if (line.offers.size() == kLinearVariants + 1) {
    for (std::size_t i = 0; i < line.offers.size(); ++i) {
      places_.emplace(place(line.offers[i].colour, line.offers[i].size), i);
    }
  } else if (line.offers.size() > kLinearVariants) {
    places_.emplace(place(colour, size), line.offers.size() - 1);
  }
}

ListingBuilder::Outcome ListingBuilder::merge(std::size_t index, const VariantFacts& facts) {
  auto& line = listing_.offers;
  auto& offer = line.offers[index];
  const std::string code = line.variant_codes.empty() ? std::string{} : line.variant_codes[index];
  const bool both_codes = !code.empty() && !facts.variant_code.empty();
  const bool both_stocks = offer.stock != Stock::unknown && facts.stock != Stock::unknown;
  if (contradicts(offer.price, facts.price) || contradicts(offer.full_price, facts.full_price) ||
      gtin_contradicts(line, index, facts.gtin) || (both_codes && code != facts.variant_code) ||
      (both_stocks && offer.stock != facts.stock)) {
    return Outcome::conflict;
  }
  if (!offer.price) offer.price = facts.price;
  if (!offer.full_price) offer.full_price = facts.full_price;
  if (offer.stock == Stock::unknown) offer.stock = facts.stock;
  if (facts.gtin) {
    line.gtins.resize(line.offers.size());
    line.gtins[index] = facts.gtin;
  }
  if (!facts.variant_code.empty()) {
    line.variant_codes.resize(line.offers.size());
    line.variant_codes[index] = facts.variant_code;
  }
  return Outcome::merged;
}

ListingBuilder::Outcome ListingBuilder::add_all(const Listing& other) {
  if (empty()) listing_.origin = other.origin;
  fill(card().line_code, other.card.line_code);
  fill(card().group_id, other.card.group_id);
  fill(card().name, other.card.name);
  fill(card().category, other.card.category);
  fill(card().composition, other.card.composition);
  fill(card().url, other.card.url);
  fill(detail().description, other.detail.description);
  fill(detail().image, other.detail.image);
  const auto& from = other.offers;
  Outcome worst = Outcome::added;
  for (std::size_t i = 0; i < from.offers.size(); ++i) {
    const auto& offer = from.offers[i];
    VariantFacts facts{from.colours[offer.colour], from.sizes[offer.size], offer.stock, offer.price,
                       offer.full_price,           std::nullopt,           {}};
    if (!from.gtins.empty()) facts.gtin = from.gtins[i];
    if (!from.variant_codes.empty()) facts.variant_code = from.variant_codes[i];
    const Outcome outcome = add(facts, from.currency);
    const bool refused = outcome != Outcome::added && outcome != Outcome::merged;
    if (refused && worst == Outcome::added) worst = outcome;
  }
  return worst;
}

Listing ListingBuilder::build() {
  sort_offers(listing_.offers);
  Listing done = std::move(listing_);
  clear();
  return done;
}

}  // namespace rangebook
