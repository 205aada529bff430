// Counting lines by size.
#include "tracker/size_reach.h"

#include <algorithm>
#include <map>
#include <utility>

namespace rangebook {
namespace {

using SystemAndFit = std::pair<SizeSystem, FitRange>;

void keep_better_label(std::string& label, const std::string& other) {
  const bool better = other.size() != label.size() ? other.size() < label.size() : other < label;
  if (better) label = other;
}

}  // namespace

void ReachTally::add(const SizeRun& run, const LineOffers& offers) {
  RunCount& count = runs_[&run];
  count.in_stock.resize(run.slots.size());
  ++count.lines;
  seen_.assign(run.slots.size(), 0);
  for (const Offer& offer : offers.offers) {
    const auto& slot = run.slot_of[offer.size];
    if (offer.stock == Stock::in_stock && slot) seen_[*slot] = 1;
  }
  for (std::size_t slot = 0; slot < seen_.size(); ++slot) {
    count.in_stock[slot] += seen_[slot] != 0 ? 1U : 0U;
  }
}

void ReachTally::merge(const ReachTally& other) {
  for (const auto& [run, count] : other.runs_) {
    RunCount& own = runs_[run];
    own.lines += count.lines;
    own.in_stock.resize(count.in_stock.size());
    for (std::size_t slot = 0; slot < count.in_stock.size(); ++slot) {
      own.in_stock[slot] += count.in_stock[slot];
    }
  }
}

std::vector<SizeReach> ReachTally::reach() const {
  std::map<SystemAndFit, std::uint32_t> lines;
  std::map<SizePosition, ReachStep> steps;
  for (const auto& [run, count] : runs_) {
    for (const SizeGroup& group : run->groups) lines[{group.system, group.fit}] += count.lines;
    for (std::size_t slot = 0; slot < run->slots.size(); ++slot) {
      const Size& size = run->slots[slot];
      ReachStep& step = steps.try_emplace(position_of(size), ReachStep{size, 0, 0}).first->second;
      keep_better_label(step.size.label, size.label);
      step.offering += count.lines;
      step.in_stock += count.in_stock[slot];
    }
  }
  std::vector<SizeReach> reach;
  for (const auto& [position, step] : steps) {
    if (reach.empty() || reach.back().system != position.system ||
        reach.back().fit != position.fit) {
      reach.push_back({position.system, position.fit, lines[{position.system, position.fit}], {}});
    }
    reach.back().steps.push_back(step);
  }
  return reach;
}

SizeFact size_fact(const SizeReach& reach) {
  const auto by_low = [](const ReachStep& a, const ReachStep& b) {
    return a.size.low < b.size.low;
  };
  const auto by_high = [](const ReachStep& a, const ReachStep& b) {
    return a.size.high < b.size.high;
  };
  SizeFact fact{reach.system, reach.fit, {}, {}, {}};
  fact.min = std::min_element(reach.steps.begin(), reach.steps.end(), by_low)->size.label;
  fact.max = std::max_element(reach.steps.begin(), reach.steps.end(), by_high)->size.label;
  for (const ReachStep& step : reach.steps) fact.labels.push_back(step.size.label);
  return fact;
}

}  // namespace rangebook
