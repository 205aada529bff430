// What each step of each trait weighs: how much more often lines that are the same show it than
// lines that are not, as a logarithm. Learnt from the two captures, without examples.
#pragma once

#include <array>
#include <vector>

#include "tracker/likeness/pair_view.h"

namespace rangebook {

using StepRates = std::array<std::array<double, kMaxSteps>, kTraits>;
/// How many pairs show each step of one trait; a pair may count in part.
using TraitLesson = std::array<double, kMaxSteps>;

/// Rates start from what is usual in the trade and move as far as the captures speak up.
class TraitWeights {
 public:
  TraitWeights();

  /// Learns how other lines look from pairs taken at random within categories. Most of them are not
  /// the same line.
  void learn_others(const std::vector<PairView>& random_pairs);
  /// Learns how the same line looks; a lesson for each trait.
  void learn_same(const std::vector<TraitLesson>& lessons);

  /// Log of the likelihood ratio: positive speaks for the same line. A trait not stated says 0.
  double weight(const PairView& view, Trait trait) const;
  double weight(const PairView& view) const;

 private:
  StepRates same_;
  StepRates others_;
};

}  // namespace rangebook
