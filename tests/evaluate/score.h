// Judges what the program said (the changes JSON) by the truth.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "tests/evaluate/truth.h"

namespace rangebook::evaluate {

/// Right, unfounded and missing answers.
struct Count {
  int right = 0;
  int wrong = 0;
  int missed = 0;

  double precision() const { return share(right, right + wrong); }
  double recall() const { return share(right, right + missed); }
  double f1() const { return share(2 * right, 2 * right + wrong + missed); }
  void add(const Count& other) {
    right += other.right;
    wrong += other.wrong;
    missed += other.missed;
  }

 private:
  static double share(int part, int all) {
    return all == 0 ? 1 : static_cast<double>(part) / static_cast<double>(all);
  }
};

struct Score {
  Count links;                         ///< pairs of lines, those with equal codes left out
  Count by_code;                       ///< pairs with equal codes
  int asked = 0;                       ///< pairs that wait for the stylist
  std::map<std::string, Count> kinds;  ///< of change
  std::vector<std::string> remarks;    ///< wrong and missing answers, readable

  /// Of the pairs there are.
  double asked_share() const {
    const int pairs = links.right + links.missed;
    return pairs == 0 ? 0 : static_cast<double>(asked) / pairs;
  }
  void add(const Score& other);
};

/// `changes` is what `rangebook changes --format json` wrote. Throws when it is not that.
Score score_of(const Seasons& seasons, const std::string& changes);

}  // namespace rangebook::evaluate
