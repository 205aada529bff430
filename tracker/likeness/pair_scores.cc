// Learning rounds and scores.
#include "tracker/likeness/pair_scores.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "tracker/category_parser.h"

namespace rangebook {
namespace {

constexpr int kRounds = 5;
/// Pairs drawn to learn how lines look that are not the same.
constexpr std::size_t kRandomPairs = 8000;
/// All examples together count for at most so many pairs: lines that kept their code were renamed
/// and rewritten less than those that are to be matched.
constexpr double kExamples = 40;
/// Only pairs at least this likely teach; unsure ones would pull the rates towards chance.
constexpr double kTeaches = 0.9;
/// Pairs below these log odds are no rivals and teach nothing.
constexpr double kHopeless = -12;
/// Lines that might turn up in any category beside those that are there.
constexpr double kUnseenLines = 5;

using Lines = std::vector<WeighedLine>;
using ByCategory = std::map<std::string_view, std::vector<std::uint32_t>>;

ByCategory by_category(const Lines& lines) {
  ByCategory groups;
  for (std::uint32_t i = 0; i < lines.size(); ++i) groups[lines[i].profile->category].push_back(i);
  return groups;
}

/// Pairs of one category each, spread over the categories as their pairs are. The steps through
/// both lists are coprime to nothing in particular but never in tune, and the same every time.
std::vector<PairView> random_pairs(const LikenessInput& input) {
  const ByCategory from = by_category(input.from);
  const ByCategory to = by_category(input.to);
  double all = 0;
  for (const auto& [category, lines] : from) {
    if (const auto other = to.find(category); other != to.end())
      all += static_cast<double>(lines.size()) * static_cast<double>(other->second.size());
  }
  std::vector<PairView> views;
  std::uint64_t state = 0x9e3779b97f4a7c15U;
  for (const auto& [category, lines] : from) {
    const auto other = to.find(category);
    if (other == to.end()) continue;
    const double pairs =
        static_cast<double>(lines.size()) * static_cast<double>(other->second.size());
    const auto count = static_cast<std::size_t>(std::min(pairs, kRandomPairs * pairs / all));
    for (std::size_t k = 0; k < count; ++k) {
      state = state * 6364136223846793005U + 1442695040888963407U;
      const std::uint32_t i = lines[(state >> 33U) % lines.size()];
      state = state * 6364136223846793005U + 1442695040888963407U;
      const std::uint32_t j = other->second[(state >> 33U) % other->second.size()];
      views.push_back(view_pair(input.from[i], input.to[j], input.rates));
    }
  }
  return views;
}

class Scoring {
 public:
  Scoring(const LikenessInput& input, std::vector<ScoredPair> pairs)
      : input_(input), pairs_(std::move(pairs)) {
    for (const WeighedLine& line : input.from) ++lines_from_[line.profile->category];
    for (const WeighedLine& line : input.to) ++lines_to_[line.profile->category];
    weights_.learn_others(random_pairs(input));
    std::vector<TraitLesson> lessons;
    for (std::size_t trait = 0; trait < kTraits; ++trait) lessons.push_back(example_lesson(trait));
    weights_.learn_same(lessons);
  }

  std::vector<ScoredPair> run() {
    for (int round = 0; round < kRounds; ++round) {
      score();
      learn();
    }
    score();
    return std::move(pairs_);
  }

 private:
  void score() {
    const double carried = std::log(carried_ / (1 - carried_));
    for (ScoredPair& pair : pairs_) {
      pair.score = carried - std::log(rivals(pair)) + weights_.weight(pair.view);
    }
  }

  /// How many lines the partner is drawn from. The side with more of them counts, so that swapping
  /// the sides changes nothing.
  double rivals(const ScoredPair& pair) const {
    const std::string_view category = input_.from[pair.lines.from].profile->category;
    const auto& step = trait_of(pair.view, Trait::category).step;
    if (!step || *step != steps::kCategorySame) {
      return kUnseenLines + static_cast<double>(std::max(input_.from.size(), input_.to.size()));
    }
    return kUnseenLines + std::max(lines_from_.at(category), lines_to_.at(category));
  }

  /// The chance of each pair with all partners of both lines in view, as far as `score` tells.
  template <typename Score>
  std::vector<double> chances(Score score) const {
    std::vector<double> sum_from(input_.from.size(), 1);
    std::vector<double> sum_to(input_.to.size(), 1);
    std::vector<double> result(pairs_.size(), 0);
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
      if (pairs_[i].score < kHopeless) continue;
      result[i] = std::exp(score(pairs_[i]));
      sum_from[pairs_[i].lines.from] += result[i];
      sum_to[pairs_[i].lines.to] += result[i];
    }
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
      const Candidate& lines = pairs_[i].lines;
      result[i] /= std::max(sum_from[lines.from], sum_to[lines.to]);
    }
    return result;
  }

  void learn() {
    double expected = 0;
    for (const double chance : chances([](const ScoredPair& pair) { return pair.score; }))
      expected += chance;
    std::vector<TraitLesson> lessons;
    for (std::size_t trait = 0; trait < kTraits; ++trait) lessons.push_back(lesson(trait));
    weights_.learn_same(lessons);
    const double most = static_cast<double>(std::min(input_.from.size(), input_.to.size()));
    carried_ = std::clamp((expected + 2) / (most + 4), 0.05, 0.95);
  }

  /// Who teaches how a text changes is judged by everything else: pairs known by their equal texts
  /// would teach that the same line never gets another. Values are judged with all, for a new style
  /// under an old name would teach that prices and cloths change at will.
  TraitLesson lesson(std::size_t trait) const {
    TraitLesson lesson = example_lesson(trait);
    const bool without = trait == static_cast<std::size_t>(Trait::description);
    const std::vector<double> chance = chances([&](const ScoredPair& pair) {
      return pair.score - (without ? weights_.weight(pair.view, Trait::description) : 0);
    });
    for (std::size_t i = 0; i < pairs_.size(); ++i) {
      const auto& step = pairs_[i].view[trait].step;
      if (step && chance[i] >= kTeaches) lesson[*step] += chance[i];
    }
    return lesson;
  }
  TraitLesson example_lesson(std::size_t trait) const {
    const auto all = static_cast<double>(input_.examples.size());
    TraitLesson lesson{};
    for (const PairView& view : input_.examples) {
      if (const auto& step = view[trait].step)
        lesson[*step] += std::min(1.0, kExamples / (all + 1));
    }
    return lesson;
  }

  const LikenessInput& input_;
  std::vector<ScoredPair> pairs_;
  std::map<std::string_view, double> lines_from_;
  std::map<std::string_view, double> lines_to_;
  TraitWeights weights_;
  double carried_ = 0.5;  ///< share of the lines that have a partner
};

}  // namespace

std::vector<ScoredPair> score_pairs(const LikenessInput& input,
                                    const std::vector<Candidate>& candidates) {
  std::vector<ScoredPair> pairs;
  pairs.reserve(candidates.size());
  for (const Candidate& candidate : candidates) {
    pairs.push_back(
        {candidate, view_pair(input.from[candidate.from], input.to[candidate.to], input.rates), 0});
  }
  return Scoring(input, std::move(pairs)).run();
}

}  // namespace rangebook
