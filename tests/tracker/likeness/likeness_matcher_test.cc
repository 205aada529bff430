// Linking by likeness on invented seasons with their truth. Bars are those the product promises for
// the middle level; the other levels are reported and held where they stand.
#include "tracker/likeness/likeness_matcher.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>

#include "tests/tracker/likeness/cosine_linker.h"
#include "tests/tracker/likeness/link_tally.h"

namespace rangebook {
namespace {

using testing::Difficulty;
using testing::Naming;
using testing::Pictures;
using testing::SeasonMaker;
using testing::SeasonPair;
using testing::ShopKind;
using testing::Tally;
using testing::Texts;

Tally match(const SeasonPair& seasons) {
  const LikenessMatcher matcher;
  return tally_of(seasons, link_lines(seasons.from, seasons.to, {}, &matcher));
}

void print(const std::string& label, const Tally& tally) {
  std::printf("%-38s pairs %5zu  precision %.4f  recall %.4f  asked %.4f (right %zu of %zu)\n",
              label.c_str(), tally.truth, tally.precision(), tally.recall(), tally.ask_share(),
              tally.asked_right, tally.asked);
}

std::vector<ShopKind> shops() {
  using testing::english;
  const auto style = Naming::style_and_garment;
  return {
      {"style names", &english(), style, Texts::long_ones, Pictures::hashed},
      {"no style names", &english(), Naming::garment_only, Texts::long_ones, Pictures::none},
      {"German", &testing::german(), Naming::quoted_style, Texts::short_ones, Pictures::by_code},
      {"French, no texts", &testing::french(), style, Texts::none, Pictures::by_name},
      {"no cloth", &english(), style, Texts::long_ones, Pictures::none, false},
      {"one text for many", &english(), Naming::numbered, Texts::same_for_many, Pictures::hashed},
      {"German, bare", &testing::german(), Naming::quoted_style, Texts::none, Pictures::none},
  };
}

/// Each kind of shop in a small and a middling size.
Tally level_tally(const std::string& label, const Difficulty& level, std::uint64_t seed) {
  Tally all;
  for (const ShopKind& shop : shops()) {
    Tally of_shop;
    of_shop.add(match(SeasonMaker(shop, level, seed).make(60)));
    of_shop.add(match(SeasonMaker(shop, level, seed + 1).make(400)));
    print(label + ": " + shop.label, of_shop);
    all.add(of_shop);
  }
  print(label, all);
  return all;
}

TEST(LikenessMatcher, EasySeasons) {
  const Tally tally = level_tally("easy", testing::easy(), testing::season_seed(11));
  EXPECT_GE(tally.precision(), 0.995);
  EXPECT_GE(tally.recall(), 0.97);
  EXPECT_LE(tally.ask_share(), 0.02);
}

TEST(LikenessMatcher, MiddleSeasons) {
  const Tally tally = level_tally("middle", testing::middle(), testing::season_seed(22));
  EXPECT_GE(tally.precision(), 0.99);
  EXPECT_GE(tally.recall(), 0.95);
  EXPECT_LE(tally.ask_share(), 0.03);
}

TEST(LikenessMatcher, HardSeasons) {
  const Tally tally = level_tally("hard", testing::hard(), testing::season_seed(33));
  EXPECT_GE(tally.precision(), 0.96);
  EXPECT_GE(tally.recall(), 0.93);
}

TEST(LikenessMatcher, NamesAloneBeatThePlainCosine) {
  constexpr double kFixedThreshold = 0.5;
  Tally ours;
  Tally fixed;
  std::vector<Tally> tuned(9);
  for (ShopKind shop : shops()) {
    if (shop.texts == Texts::none) continue;
    shop.names_only = true;
    const SeasonPair seasons =
        SeasonMaker(shop, testing::middle(), testing::season_seed(44)).make(300);
    ours.add(match(seasons));
    const auto pairs = testing::cosine_pairs(seasons.from, seasons.to);
    fixed.add(tally_of(seasons, testing::link_by_cosine(pairs, kFixedThreshold)));
    for (std::size_t i = 0; i < tuned.size(); ++i) {
      const double threshold = 0.1 * static_cast<double>(i + 1);
      tuned[i].add(tally_of(seasons, testing::link_by_cosine(pairs, threshold)));
    }
    print("names only: " + shop.label, match(seasons));
  }
  const auto best = std::max_element(
      tuned.begin(), tuned.end(), [](const Tally& a, const Tally& b) { return a.f1() < b.f1(); });
  print("names only", ours);
  print("names only, cosine from 0.5", fixed);
  print("names only, cosine, best threshold", *best);
  std::printf("names only: F1 %.4f; cosine from 0.5: %.4f; at its best threshold: %.4f\n",
              ours.f1(), fixed.f1(), best->f1());
  EXPECT_GE(ours.f1(), fixed.f1() + 0.03);
  EXPECT_GE(ours.f1(), best->f1() + 0.01);
  EXPECT_GE(ours.precision(), 0.98);
}

}  // namespace
}  // namespace rangebook
