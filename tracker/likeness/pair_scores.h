// Scores of candidate pairs: the weights of their traits against the chance of meeting such a pair
// at all, learnt from the two captures by expectation and maximisation.
#pragma once

#include <vector>

#include "tracker/likeness/candidates.h"
#include "tracker/likeness/pair_view.h"
#include "tracker/likeness/trait_weights.h"

namespace rangebook {

/// The lines to match, and examples: pairs that exact evidence linked.
struct LikenessInput {
  const std::vector<WeighedLine>& from;
  const std::vector<WeighedLine>& to;
  const std::vector<PairView>& examples;
  const WordRates& rates;
};

struct ScoredPair {
  Candidate lines;
  PairView view;
  double score = 0;  ///< log odds of being the same line, other partners aside
};

/// Scores for all candidates, in their order.
std::vector<ScoredPair> score_pairs(const LikenessInput& input,
                                    const std::vector<Candidate>& candidates);

}  // namespace rangebook
