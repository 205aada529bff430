// Counting how well links agree with the truth of invented seasons.
#pragma once

#include <set>
#include <utility>

#include "tests/tracker/likeness/invented_seasons.h"
#include "tracker/linker.h"

namespace rangebook::testing {

/// Pairs that exact evidence left open, and what was found of them.
struct Tally {
  std::size_t truth = 0;
  std::size_t linked = 0;
  std::size_t right = 0;
  std::size_t asked = 0;
  std::size_t asked_right = 0;

  double precision() const { return linked == 0 ? 1 : share(right, linked); }
  double recall() const { return share(right, truth); }
  double ask_share() const { return share(asked, truth); }
  double f1() const { return 2 * share(right, linked + truth); }
  void add(const Tally& other) {
    truth += other.truth;
    linked += other.linked;
    right += other.right;
    asked += other.asked;
    asked_right += other.asked_right;
  }

 private:
  static double share(std::size_t part, std::size_t all) {
    return static_cast<double>(part) / static_cast<double>(all);
  }
};

inline Tally tally_of(const SeasonPair& seasons, const LinkSet& links) {
  const std::set<std::pair<std::size_t, std::size_t>> truth(seasons.truth.begin(),
                                                            seasons.truth.end());
  const auto is_true = [&](const Link& link) { return truth.count({link.from, link.to}); };
  Tally tally;
  tally.truth = truth.size();
  for (const Link& link : links.links) {
    if (link.authority == LinkAuthority::code) {
      tally.truth -= is_true(link);
    } else {
      ++tally.linked;
      tally.right += is_true(link);
    }
  }
  for (const Link& link : links.ask) {
    ++tally.asked;
    tally.asked_right += is_true(link);
  }
  return tally;
}

}  // namespace rangebook::testing
