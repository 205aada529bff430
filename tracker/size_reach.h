// Size reach: how many lines of a category offer each size, and have it in stock.
#pragma once

#include <cstdint>
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
    std::vector<std::uint32_t> in_stock;  // by slot of the run
  };
  std::unordered_map<const SizeRun*, RunCount> runs_;
  std::vector<char> seen_;  // slots of the line being added
};

/// The size range of a reach as a fact. `reach` has at least one step.
SizeFact size_fact(const SizeReach& reach);

}  // namespace rangebook
