// Candidates: nearly every pair that belongs together is among them, at a bounded number.
#include "tracker/likeness/candidates.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>

#include "tests/tracker/likeness/invented_seasons.h"

namespace rangebook {
namespace {

using testing::ShopKind;
using testing::Texts;

struct Search {
  std::size_t pairs = 0;
  std::size_t found = 0;
  std::size_t candidates = 0;
  std::size_t lines = 0;

  double recall() const { return static_cast<double>(found) / static_cast<double>(pairs); }
};

std::vector<LineProfile> profiles_of(ProfileBuilder& builder, const Snapshot& snapshot) {
  std::vector<LineProfile> profiles;
  for (const LineState& line : snapshot.lines) {
    profiles.push_back(builder.build(line.listing, line.listing.detail));
  }
  return profiles;
}

Search search(const ShopKind& shop, std::size_t lines) {
  const auto seasons =
      testing::SeasonMaker(shop, testing::middle(), testing::season_seed(55)).make(lines);
  ProfileBuilder builder(SizeSystem::uk);
  const auto from = profiles_of(builder, seasons.from);
  const auto to = profiles_of(builder, seasons.to);
  const auto candidates = find_candidates(from, to, {});
  Search result{seasons.truth.size(), 0, candidates.size(), from.size() + to.size()};
  for (const auto& [i, j] : seasons.truth) {
    const Candidate pair{static_cast<std::uint32_t>(i), static_cast<std::uint32_t>(j)};
    result.found += std::binary_search(candidates.begin(), candidates.end(), pair);
  }
  return result;
}

TEST(Candidates, HoldNearlyAllPairsWhateverTheShopStates) {
  const ShopKind shops[] = {
      {"style names", &testing::english()},
      {"bare", &testing::german(), testing::Naming::quoted_style, Texts::none},
      {"names only", &testing::french(), testing::Naming::style_and_garment, Texts::short_ones,
       testing::Pictures::none, false, true},
  };
  for (const ShopKind& shop : shops) {
    const Search result = search(shop, 1000);
    std::printf("candidates, %-12s recall %.4f, %.1f for each line\n", shop.label.c_str(),
                result.recall(),
                static_cast<double>(result.candidates) / static_cast<double>(result.lines));
    EXPECT_GE(result.recall(), 0.98) << shop.label;
  }
}

TEST(Candidates, AreAtMostSoManyForEachLine) {
  const Search result = search({"style names", &testing::english()}, 400);
  EXPECT_LE(result.candidates, result.lines * CandidateLimits{}.kept);
}

}  // namespace
}  // namespace rangebook
