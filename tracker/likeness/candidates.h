// Which pairs are worth a look: lines that share something rare. An inverted index with a bound on
// the entries read for each line keeps the cost linear in the lines.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "tracker/likeness/line_profile.h"

namespace rangebook {

struct Candidate {
  std::uint32_t from = 0;
  std::uint32_t to = 0;

  auto operator<=>(const Candidate&) const = default;
};

/// Bounds of the search. For each line at most `entries` entries of the index are read, those of
/// its rarest features first, and the `kept` lines with the most weight in common are kept.
struct CandidateLimits {
  std::size_t entries = 6000;
  std::size_t kept = 24;
};

/// Pairs of indices into the two lists, sorted, each once. A line is a candidate of another when
/// either of them finds the other, so swapping the sides gives the same pairs.
std::vector<Candidate> find_candidates(const std::vector<LineProfile>& from,
                                       const std::vector<LineProfile>& to,
                                       const CandidateLimits& limits);

}  // namespace rangebook
