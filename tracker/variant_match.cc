// Pairing variants by colour and size.
#include "tracker/variant_match.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <unordered_map>

namespace rangebook {
namespace {

/// A variant's place in the later side's colours and sizes.
struct Placed {
  std::uint32_t place = 0;
  const Offer* offer = nullptr;
};

constexpr std::uint32_t place_of(std::uint16_t colour, std::uint16_t size) {
  return (static_cast<std::uint32_t>(colour) << 16) | size;
}

IndexMap match_labels(const std::vector<std::string>& before,
                      const std::vector<std::string>& after) {
  std::unordered_map<std::string_view, std::uint16_t> index;
  for (std::size_t j = 0; j < after.size(); ++j) {
    index.emplace(after[j], static_cast<std::uint16_t>(j));
  }
  IndexMap map(before.size());
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (const auto found = index.find(before[i]); found != index.end()) map[i] = found->second;
  }
  return map;
}

/// Pairs what `map` leaves open by key: the first such index of each side; no key pairs nothing.
template <typename Key>
void match_keys(IndexMap& map, const std::vector<std::optional<Key>>& before,
                const std::vector<std::optional<Key>>& after) {
  std::vector<char> taken(after.size());
  for (const auto& j : map) {
    if (j) taken[*j] = 1;
  }
  std::map<Key, std::uint16_t> open;
  for (std::size_t j = 0; j < after.size(); ++j) {
    if (taken[j] == 0 && after[j]) open.emplace(*after[j], static_cast<std::uint16_t>(j));
  }
  for (std::size_t i = 0; i < map.size() && !open.empty(); ++i) {
    if (map[i] || !before[i]) continue;
    const auto found = open.find(*before[i]);
    if (found == open.end()) continue;
    map[i] = found->second;
    open.erase(found);
  }
}

std::vector<std::optional<std::string>> colour_keys(const std::vector<std::string>& colours,
                                                    Interpreter& interpreter) {
  std::vector<std::optional<std::string>> keys;
  keys.reserve(colours.size());
  for (const std::string& colour : colours) {
    keys.push_back(colour.empty() ? std::nullopt : std::optional(interpreter.colour_key(colour)));
  }
  return keys;
}

std::vector<std::optional<SizePosition>> positions(const SizeRun& run) {
  std::vector<std::optional<SizePosition>> keys;
  keys.reserve(run.slot_of.size());
  for (const auto& slot : run.slot_of) {
    keys.push_back(slot ? std::optional(position_of(run.slots[*slot])) : std::nullopt);
  }
  return keys;
}

std::vector<Placed> sorted(std::vector<Placed> placed) {
  const auto less = [](const Placed& a, const Placed& b) { return a.place < b.place; };
  if (!std::is_sorted(placed.begin(), placed.end(), less)) {
    std::sort(placed.begin(), placed.end(), less);
  }
  return placed;
}

std::vector<Placed> placed_as_is(const LineOffers& side) {
  std::vector<Placed> placed;
  placed.reserve(side.offers.size());
  for (const Offer& offer : side.offers) {
    placed.push_back({place_of(offer.colour, offer.size), &offer});
  }
  return sorted(std::move(placed));
}

std::vector<Placed> placed_by(const LineOffers& side, const IndexMap& colours,
                              const IndexMap& sizes) {
  std::vector<Placed> placed;
  placed.reserve(side.offers.size());
  for (const Offer& offer : side.offers) {
    const auto colour = colours[offer.colour];
    const auto size = sizes[offer.size];
    if (colour && size) placed.push_back({place_of(*colour, *size), &offer});
  }
  return sorted(std::move(placed));
}

std::vector<CommonVariant> merged(const std::vector<Placed>& before,
                                  const std::vector<Placed>& after) {
  std::vector<CommonVariant> common;
  common.reserve(std::min(before.size(), after.size()));
  auto b = before.begin();
  auto a = after.begin();
  while (b != before.end() && a != after.end()) {
    if (b->place < a->place) {
      ++b;
    } else if (a->place < b->place) {
      ++a;
    } else {
      common.push_back({(b++)->offer, (a++)->offer});
    }
  }
  return common;
}

}  // namespace

IndexMap match_colours(const std::vector<std::string>& before,
                       const std::vector<std::string>& after, Interpreter& interpreter) {
  IndexMap map = match_labels(before, after);
  match_keys(map, colour_keys(before, interpreter), colour_keys(after, interpreter));
  return map;
}

IndexMap match_sizes(const LineOffers& before, const SizeRun& sizes_before, const LineOffers& after,
                     const SizeRun& sizes_after) {
  IndexMap map = match_labels(before.sizes, after.sizes);
  match_keys(map, positions(sizes_before), positions(sizes_after));
  return map;
}

namespace {

/// Pairs offers place by place, the usual case; nothing if the sides are not laid out alike.
std::optional<std::vector<CommonVariant>> paired_in_place(const LineOffers& before,
                                                          const LineOffers& after) {
  const auto same_place = [](const Offer& a, const Offer& b) {
    return a.colour == b.colour && a.size == b.size;
  };
  if (!std::equal(before.offers.begin(), before.offers.end(), after.offers.begin(),
                  after.offers.end(), same_place)) {
    return std::nullopt;
  }
  std::vector<CommonVariant> pairs;
  pairs.reserve(before.offers.size());
  for (std::size_t i = 0; i < before.offers.size(); ++i) {
    pairs.push_back({&before.offers[i], &after.offers[i]});
  }
  return pairs;
}

}  // namespace

std::vector<CommonVariant> common_variants(const LineOffers& before, const SizeRun& sizes_before,
                                           const LineOffers& after, const SizeRun& sizes_after,
                                           Interpreter& interpreter) {
  if (before.colours == after.colours && before.sizes == after.sizes) {
    if (auto pairs = paired_in_place(before, after)) return *std::move(pairs);
    return merged(placed_as_is(before), placed_as_is(after));
  }
  const IndexMap colours = match_colours(before.colours, after.colours, interpreter);
  const IndexMap sizes = match_sizes(before, sizes_before, after, sizes_after);
  return merged(placed_by(before, colours, sizes), placed_as_is(after));
}

}  // namespace rangebook
