// Counting lines by size.
#include "tracker/size_reach.h"

#include <algorithm>
#include <map>
#include <utility>

#include "tracker/category_parser.h"
#include "tracker/wilson.h"

namespace rangebook {
namespace {

using SystemAndFit = std::pair<SizeSystem, FitRange>;

void keep_better_label(std::string& label, const std::string& other) {
  const bool better = other.size() != label.size() ? other.size() < label.size() : other < label;
  if (better) label = other;
}

/// To be had beats not stated, which beats sold out.
Stock better(Stock a, Stock b) {
  if (a == Stock::in_stock || b == Stock::in_stock) return Stock::in_stock;
  return a == Stock::unknown ? a : b;
}

}  // namespace

void ReachTally::add(const SizeRun& run, const LineOffers& offers) {
  RunCount& count = runs_[&run];
  count.in_stock.resize(run.slots.size());
  count.stock_unknown.resize(run.slots.size());
  ++count.lines;
  seen_.assign(run.slots.size(), Stock::sold_out);
  for (const Offer& offer : offers.offers) {
    const auto& slot = run.slot_of[offer.size];
    if (slot) seen_[*slot] = better(seen_[*slot], offer.stock);
  }
  for (std::size_t slot = 0; slot < seen_.size(); ++slot) {
    count.in_stock[slot] += seen_[slot] == Stock::in_stock ? 1U : 0U;
    count.stock_unknown[slot] += seen_[slot] == Stock::unknown ? 1U : 0U;
  }
}

void ReachTally::merge(const ReachTally& other) {
  for (const auto& [run, count] : other.runs_) {
    RunCount& own = runs_[run];
    own.lines += count.lines;
    own.in_stock.resize(count.in_stock.size());
    own.stock_unknown.resize(count.stock_unknown.size());
    for (std::size_t slot = 0; slot < count.in_stock.size(); ++slot) {
      own.in_stock[slot] += count.in_stock[slot];
      own.stock_unknown[slot] += count.stock_unknown[slot];
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
      ReachStep& step = steps.try_emplace(position_of(size), ReachStep{size}).first->second;
      keep_better_label(step.size.label, size.label);
      step.offering += count.lines;
      step.in_stock += count.in_stock[slot];
      step.stock_unknown += count.stock_unknown[slot];
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

bool comes_in_sizes(std::string_view category) {
  return !category_within(category, "accessories") && !category_within(category, "bags");
}

void add_intervals(std::vector<SizeReach>& reach) {
  for (SizeReach& each : reach) {
    for (ReachStep& step : each.steps) {
      step.offering_interval = wilson_interval(step.offering, each.lines);
      step.in_stock_interval = wilson_interval(step.in_stock, each.lines);
    }
  }
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
