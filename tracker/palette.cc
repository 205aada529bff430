// Each distinct colour name is read once; lines only count.
#include "tracker/palette.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>

#include "tracker/category_book.h"
#include "tracker/colour_parser.h"
#include "tracker/colour_traits.h"
#include "tracker/differ.h"
#include "tracker/interpreter.h"

namespace rangebook {
namespace {

template <typename Counts, typename Enum>
void count(Counts& counts, Enum what) {
  ++counts[static_cast<std::size_t>(what)];
}

/// What one colour name adds to a palette.
struct NameReading {
  std::string key;
  ColourReading::Kind kind = ColourReading::Kind::unknown;
  bool approximate = false;
  ColourTraits traits;
  PaletteColour place;  // of a single known colour
};

NameReading read_name(const std::string& name, const ColourOverrides& overrides) {
  const ColourReading reading = read_colour(name, overrides);
  NameReading result{colour_key(name), reading.kind, reading.approximate, {}, {}};
  if (reading.kind == ColourReading::Kind::single) {
    const Srgb colour = reading.colours.front();
    result.traits = traits_of(colour);
    const ColourPlace place = place_of(colour);
    result.place = {name, colour, place.hue, place.lightness, place.grey, 0};
  }
  return result;
}

/// A palette in the making.
struct Tally {
  Palette palette;
  std::map<std::string_view, std::uint32_t> unknown;  // by name as first met
  std::map<std::string_view, PaletteColour> known;    // by colour_key

  void add(const NameReading& reading, std::string_view name) {
    using Kind = ColourReading::Kind;
    ++palette.colourways;
    switch (reading.kind) {
      case Kind::unknown:
        ++palette.unknown;
        ++unknown[name];
        return;
      case Kind::several:
        ++palette.several;
        return;
      case Kind::print:
        ++palette.prints;
        return;
      case Kind::single:
        count(palette.families, reading.traits.family);
        if (reading.approximate) {
          ++palette.by_family;
        } else {
          add_traits(reading.traits);
          const auto [entry, is_new] = known.try_emplace(reading.key, reading.place);
          if (is_new) entry->second.name = name;
          ++entry->second.colourways;
        }
        return;
    }
  }

  void add_traits(const ColourTraits& traits) {
    ++palette.known;
    count(palette.undertones, traits.undertone);
    count(palette.values, traits.value);
    count(palette.chromas, traits.chroma);
  }

  Palette finish() {
    std::vector<std::pair<std::string_view, std::uint32_t>> names(unknown.begin(), unknown.end());
    std::stable_sort(names.begin(), names.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    for (const auto& [name, times] : names) palette.unknown_names.emplace_back(name);
    for (auto& [key, colour] : known) palette.colours.push_back(std::move(colour));
    std::stable_sort(palette.colours.begin(), palette.colours.end(),
                     [](const auto& a, const auto& b) { return a.colourways > b.colourways; });
    return std::move(palette);
  }
};

/// Reads every line of a snapshot into the tallies of its category and of the whole.
class PaletteReader {
 public:
  PaletteReader(const Snapshot& snapshot, const ColourOverrides& overrides)
      : overrides_(overrides), interpreter_(snapshot.shop.sizes) {
    tallies_[kWholeShop];
  }

  void add(const Listing& listing, const Scope& within) {
    const std::string_view category = interpreter_.category(listing.card);
    if (!scope_covers(within, category)) return;
    const auto names = distinct_names(listing.offers.colours);
    for (Tally* tally : {&tallies_[kWholeShop], &tallies_[category]}) {
      ++tally->palette.lines;
      if (names.empty()) ++tally->palette.without_colour;
      for (const auto& [reading, name] : names) tally->add(*reading, name);
    }
  }

  std::vector<CategoryPalette> finish() {
    std::vector<CategoryPalette> all{{std::string(kWholeShop), tallies_[kWholeShop].finish()}};
    for (auto& [category, tally] : tallies_) {
      if (category != kWholeShop) all.push_back({std::string(category), tally.finish()});
    }
    return all;
  }

 private:
  using Names = std::vector<std::pair<const NameReading*, std::string_view>>;

  const NameReading& reading_of(const std::string& name) {
    const auto [found, added] = readings_.try_emplace(name);
    if (added) found->second = read_name(name, overrides_);
    return found->second;
  }

  /// Spellings of one colour of a line count once; an empty one says nothing. Unknown names are
  /// listed in the spelling met first.
  Names distinct_names(const std::vector<std::string>& colours) {
    Names names;
    for (const std::string& name : colours) {
      const NameReading& reading = reading_of(name);
      const bool known = std::any_of(names.begin(), names.end(), [&reading](const auto& each) {
        return each.first->key == reading.key;
      });
      if (reading.key.empty() || known) continue;
      const auto spelling = spellings_.try_emplace(reading.key, name).first;
      names.emplace_back(&reading, spelling->second);
    }
    return names;
  }

  const ColourOverrides& overrides_;
  Interpreter interpreter_;
  std::map<std::string_view, Tally> tallies_;
  std::unordered_map<std::string, NameReading> readings_;
  std::unordered_map<std::string, std::string> spellings_;
};

}  // namespace

std::vector<CategoryPalette> palettes_of(const Snapshot& snapshot, const Scope& within,
                                         const ColourOverrides& overrides) {
  PaletteReader reader(snapshot, overrides);
  for (const LineState& line : snapshot.lines) reader.add(line.listing, within);
  return reader.finish();
}

std::vector<PalettePair> compare_palettes(const Snapshot& from, const Snapshot& to,
                                          const Scope& common) {
  std::map<std::string, PalettePair> pairs;
  for (auto& each : palettes_of(from, common))
    pairs[each.category].before = std::move(each.palette);
  for (auto& each : palettes_of(to, common)) pairs[each.category].after = std::move(each.palette);
  std::vector<PalettePair> result;
  for (auto& [category, pair] : pairs) {
    pair.category = category;
    result.push_back(std::move(pair));
  }
  std::stable_partition(result.begin(), result.end(),
                        [](const PalettePair& pair) { return pair.category == kWholeShop; });
  return result;
}

}  // namespace rangebook
