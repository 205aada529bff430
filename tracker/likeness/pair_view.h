// What two lines have in common, trait by trait, in a few steps each. Steps instead of similarities
// so that how often each step is met, among lines that are the same and lines that are not, can be
// counted from the captures themselves.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "tracker/likeness/line_profile.h"
#include "tracker/likeness/word_rates.h"

namespace rangebook {

enum class Trait : std::uint8_t {
  name,
  description,
  composition,
  colours,
  price,
  sizes,
  picture,
  code,
  category,
};
inline constexpr std::size_t kTraits = 9;
inline constexpr std::size_t kMaxSteps = 7;

/// How alike two lines are in one trait: 0 is least; see pair_view.cc for what each step means.
struct TraitView {
  std::optional<std::uint8_t> step;  ///< nothing when one side does not state the trait
  /// The chance that another line shows this step, where it depends on how common the shared value
  /// is; nothing where only counting tells.
  std::optional<double> chance;
};
using PairView = std::array<TraitView, kTraits>;

inline const TraitView& trait_of(const PairView& view, Trait trait) {
  return view[static_cast<std::size_t>(trait)];
}

/// A profile with the weights of its words, worked out once.
struct WeighedLine {
  const LineProfile* profile = nullptr;
  std::vector<double> name;  ///< for each word: the log of its rarity in the line's category
  std::vector<double> description;
  std::vector<double> picture;
  double description_norm = 0;  ///< without the words of the line's own name
  double picture_norm = 0;
};

std::vector<WeighedLine> weigh(const std::vector<LineProfile>& profiles, const WordRates& rates);

PairView view_pair(const WeighedLine& a, const WeighedLine& b, const WordRates& rates);

/// Steps, for whoever words a reason.
namespace steps {
inline constexpr std::uint8_t kNameEqual = 6;
inline constexpr std::uint8_t kNameNear = 4;
inline constexpr std::uint8_t kDescriptionEqual = 6;
inline constexpr std::uint8_t kDescriptionNear = 5;
inline constexpr std::uint8_t kDescriptionMuch = 4;
inline constexpr std::uint8_t kDescriptionAlike = 3;
inline constexpr std::uint8_t kCompositionEqual = 3;
inline constexpr std::uint8_t kCompositionNear = 2;
inline constexpr std::uint8_t kPriceNear = 4;
inline constexpr std::uint8_t kPictureEqual = 2;
inline constexpr std::uint8_t kCategorySame = 2;
}  // namespace steps

}  // namespace rangebook
