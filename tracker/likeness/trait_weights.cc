// Usual rates, and counting on top of them (Fellegi and Sunter, A theory for record linkage, 1969;
// the expectation step is with whoever calls learn_same).
#include "tracker/likeness/trait_weights.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rangebook {
namespace {

/// How many pairs the usual rates count for.
constexpr double kUsualSame = 40;
constexpr double kUsualOthers = 200;
/// Traits depend on each other: who writes a new text also takes a new picture. Below 1, their
/// weights add up to less than they would alone.
constexpr double kDependence = 0.9;

constexpr std::size_t index(Trait trait) { return static_cast<std::size_t>(trait); }

// From least to most alike. Common practice of the trade, no source; each row sums to 1.
constexpr StepRates kSame{{
    {0.06, 0.04, 0.06, 0.10, 0.14, 0.10, 0.50},  // name
    {0.03, 0.04, 0.06, 0.10, 0.17, 0.25, 0.35},  // description
    {0.03, 0.05, 0.08, 0.84},                    // composition
    {0.08, 0.08, 0.14, 0.20, 0.20, 0.30},        // colours
    {0.01, 0.03, 0.06, 0.10, 0.22, 0.18, 0.40},  // price
    {0.02, 0.08, 0.20, 0.70},                    // sizes
    {0.40, 0.20, 0.40},                          // picture
    {0.75, 0.25},                                // code
    {0.01, 0.05, 0.94},                          // category
}};
// Within a category, but for the last row. Where the view names a chance, that counts instead.
constexpr StepRates kOthers{{
    {0.70, 0.15, 0.08, 0.04, 0.02, 0.006, 0.004},  // name
    {0.40, 0.32, 0.17, 0.07, 0.03, 0.008, 0.002},  // description
    {0.55, 0.27, 0.08, 0.10},                      // composition
    {0.72, 0.17, 0.06, 0.02, 0.02, 0.01},          // colours
    {0.12, 0.20, 0.18, 0.18, 0.20, 0.07, 0.05},    // price
    {0.08, 0.17, 0.35, 0.40},                      // sizes
    {0.90, 0.095, 0.005},                          // picture
    {0.98, 0.02},                                  // code
    {0.80, 0.12, 0.08},                            // category
}};

void learn(StepRates& rates, double usual_pairs, const StepRates& usual,
           const std::vector<TraitLesson>& lessons) {
  for (std::size_t trait = 0; trait < kTraits; ++trait) {
    const TraitLesson& seen = lessons[trait];
    const double all = usual_pairs + std::accumulate(seen.begin(), seen.end(), 0.0);
    for (std::size_t step = 0; step < kMaxSteps; ++step)
      rates[trait][step] = (usual_pairs * usual[trait][step] + seen[step]) / all;
  }
}

}  // namespace

TraitWeights::TraitWeights() : same_(kSame), others_(kOthers) {}

// Random pairs are of one category, so the category itself keeps its usual rates.
void TraitWeights::learn_others(const std::vector<PairView>& random_pairs) {
  std::vector<TraitLesson> lessons(kTraits, TraitLesson{});
  for (const PairView& view : random_pairs) {
    for (std::size_t trait = 0; trait < kTraits; ++trait) {
      if (const auto& step = view[trait].step) ++lessons[trait][*step];
    }
  }
  learn(others_, kUsualOthers, kOthers, lessons);
  others_[index(Trait::category)] = kOthers[index(Trait::category)];
}

void TraitWeights::learn_same(const std::vector<TraitLesson>& lessons) {
  learn(same_, kUsualSame, kSame, lessons);
  same_[index(Trait::category)] = kSame[index(Trait::category)];
}

// The category weighs only where it differs: everything else is already judged within it.
double TraitWeights::weight(const PairView& view, Trait trait) const {
  const TraitView& seen = trait_of(view, trait);
  if (!seen.step) return 0;
  if (trait == Trait::category && *seen.step == steps::kCategorySame) return 0;
  const double same = same_[index(trait)][*seen.step];
  const double others = seen.chance ? *seen.chance : others_[index(trait)][*seen.step];
  return kDependence * std::log(same / others);
}

double TraitWeights::weight(const PairView& view) const {
  double sum = 0;
  for (std::size_t trait = 0; trait < kTraits; ++trait) {
    sum += weight(view, static_cast<Trait>(trait));
  }
  return sum;
}

}  // namespace rangebook
