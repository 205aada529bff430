// Linking by likeness: lines that exact evidence left over are compared in all their traits, and
// each gets the partner that explains both captures best, or none. Needs no examples.
#pragma once

#include <functional>
#include <vector>

#include "tracker/likeness/candidates.h"
#include "tracker/linker.h"

namespace rangebook {

/// Where the three bands part, as chances that a pair is the same line. `link_from` is
/// where, over invented ranges, less than one link in a hundred is wrong at the middle level: a
/// wrong link tells a change that never was, while a pair asked about costs one look. Nothing below
/// `ask_from` is worth a look, since more than half of such pairs are different lines there, unless
/// only a second partner nearly as good stands in the way.
struct LikenessOptions {
  double link_from = 0.80;
  double ask_from = 0.60;
  CandidateLimits candidates = {};
};

/// Reads descriptions and pictures of some lines of a snapshot, in the order asked.
using DetailReader =
    std::function<std::vector<LineDetail>(const Snapshot&, const std::vector<std::size_t>&)>;

/// The score of a link is the chance that both are the same line, by the evidence and against the
/// best other explanation: with a second partner nearly as good it is close to a half. A pair by
/// name alone is never linked when code, composition and price all differ.
class LikenessMatcher : public Matcher {
 public:
  /// Without a reader the details are those in the snapshots.
  explicit LikenessMatcher(LikenessOptions options = {}, DetailReader details = {})
      : options_(options), details_(std::move(details)) {}

  Matches match(const Leftovers& left) const override;

 private:
  LikenessOptions options_;
  DetailReader details_;
};

}  // namespace rangebook
