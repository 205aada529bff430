// A capture of an invented shop as the linker sees it, without tables and book: for trying many
// pairs quickly. What the program really answers is tested by tests/evaluate/run.
#pragma once

#include <algorithm>

#include "schema/snapshot.h"
#include "tests/evaluate/range_model.h"
#include "tracker/size_parser.h"

namespace rangebook::evaluate {

inline SizeSystem system_of(const Shop& shop) {
  return shop.system == "uk"      ? SizeSystem::uk
         : shop.system == "us"    ? SizeSystem::us
         : shop.system == "fr"    ? SizeSystem::fr
         : shop.system == "alpha" ? SizeSystem::alpha
                                  : SizeSystem::unknown;
}

inline Listing listing_of(const Shop& shop, const Line& line) {
  Listing listing;
  listing.card = {line.code, "", line.name, line.category_words, line.composition, line.url};
  if (!shop.columns.contains("composition")) listing.card.composition.clear();
  if (!shop.columns.contains("url")) listing.card.url.clear();
  listing.detail = {line.description, shop.columns.contains("image") ? line.image : std::string()};
  LineOffers& offers = listing.offers;
  offers.currency = Currency::from_code(shop.currency);
  const auto place = [](std::vector<std::string>& list, const std::string& label) {
    return static_cast<std::uint16_t>(std::find(list.begin(), list.end(), label) - list.begin());
  };
  for (const Colourway& colour : line.colours) {
    offers.colours.push_back(colour.name);
    for (const SizeStep step : colour.sizes) offers.sizes.push_back(shop.label(step));
    if (colour.sizes.empty()) offers.sizes.emplace_back();
  }
  for (auto* list : {&offers.colours, &offers.sizes}) {
    std::sort(list->begin(), list->end());
    list->erase(std::unique(list->begin(), list->end()), list->end());
  }
  for (const Colourway& colour : line.colours) {
    for (const std::string& label : offers.sizes) {
      const bool there = colour.sizes.empty() ||
                         std::any_of(colour.sizes.begin(), colour.sizes.end(),
                                     [&](SizeStep step) { return shop.label(step) == label; });
      if (!there) continue;
      Offer offer;
      offer.colour = place(offers.colours, colour.name);
      offer.size = place(offers.sizes, label);
      offer.price = colour.price;
      if (colour.full_price) offer.full_price = *colour.full_price;
      offers.offers.push_back(offer);
    }
  }
  std::sort(offers.offers.begin(), offers.offers.end(), [](const Offer& a, const Offer& b) {
    return a.colour != b.colour ? a.colour < b.colour : a.size < b.size;
  });
  return listing;
}

/// `lines` receives the line of each state.
inline Snapshot snapshot_of(const Shop& shop, const Capture& capture, std::int64_t id,
                            std::vector<const Line*>& lines) {
  Snapshot snapshot;
  snapshot.shop.slug = "it";
  snapshot.shop.currency = Currency::from_code(shop.currency);
  snapshot.shop.sizes = system_of(shop);
  snapshot.capture.id = id;
  for (const Line& line : capture.lines) {
    if (line.refused) {
      snapshot.refused.push_back({line.code, line.name});
      continue;
    }
    snapshot.lines.push_back(
        {id * 100000 + static_cast<std::int64_t>(lines.size()), listing_of(shop, line), {}});
    lines.push_back(&line);
  }
  return snapshot;
}

}  // namespace rangebook::evaluate
