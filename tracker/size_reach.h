// Size reach: how many lines of a category offer each size, and have it in stock.
#pragma once

#include <cstdint>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "schema/change.h"
#include "tracker/interpreter.h"

namespace rangebook {

/// Counts lines by size. Lines with the same size run are counted together, so adding a line costs
/// one pass over its offers. Runs must outlive the tally.
class ReachTally {
 public:
  void add(const SizeRun& run, const LineOffers& offers);
  void merge(const ReachTally& other);

  /// By system, then fit range; sizes of no known system are left out. A size that lines spell
  /// differently has its shortest label, then the first by bytes.
  std::vector<SizeReach> reach() const;

 private:
  struct RunCount {
    std::uint32_t lines = 0;
    std::vector<std::uint32_t> in_stock;       // by slot of the run
    std::vector<std::uint32_t> stock_unknown;  // likewise
  };
  std::unordered_map<const SizeRun*, RunCount> runs_;
  std::vector<Stock> seen_;  // the best of each slot of the line being added
};

/// False for categories whose lines mostly come in no sizes, such as scarves and bags (common
/// practice, no source): that such a line states none hides nothing.
bool comes_in_sizes(std::string_view category);

/// Adds the 95% interval to every step: the lines seen are some of those there are.
void add_intervals(std::vector<SizeReach>& reach);

/// The size range of a reach as a fact. `reach` has at least one step.
SizeFact size_fact(const SizeReach& reach);

}  // namespace rangebook
