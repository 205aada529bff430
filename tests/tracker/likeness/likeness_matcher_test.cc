// Linking by likeness on invented seasons with their truth. Bars are those the product promises for
// the middle level; the other levels are reported and held where they stand.
#include "tracker/likeness/likeness_matcher.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdio>
#include <set>

#include "tests/tracker/likeness/invented_seasons.h"
#include "tests/tracker/range_text.h"

namespace rangebook {
namespace {

using namespace testing;  // the invented seasons; gtest itself is ::testing

using Pairs = std::set<std::pair<std::size_t, std::size_t>>;

/// What of the pairs that exact evidence left open was found.
struct Tally {
  std::size_t truth = 0;
  std::size_t linked = 0;
  std::size_t right = 0;
  std::size_t asked = 0;
  std::size_t asked_right = 0;

  double precision() const { return linked == 0 ? 1 : share(right, linked); }
  double recall() const { return share(right, truth); }
  double ask_share() const { return share(asked, truth); }
  double f1() const {
    return 2.0 * static_cast<double>(right) / static_cast<double>(linked + truth);
  }
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

Tally tally_of(const SeasonPair& seasons) {
  const LikenessMatcher matcher;
  const LinkSet links = link_lines(seasons.from, seasons.to, {}, &matcher);
  const Pairs truth(seasons.truth.begin(), seasons.truth.end());
  Tally tally;
  tally.truth = truth.size();
  for (const Link& link : links.links) {
    if (link.authority == LinkAuthority::code) {
      tally.truth -= truth.count({link.from, link.to});
      continue;
    }
    ++tally.linked;
    tally.right += truth.count({link.from, link.to});
  }
  for (const Link& link : links.ask) {
    ++tally.asked;
    tally.asked_right += truth.count({link.from, link.to});
  }
  return tally;
}

void print(const std::string& label, const Tally& tally) {
  std::printf("%-34s pairs %5zu  precision %.4f  recall %.4f  asked %.4f (right %zu of %zu)\n",
              label.c_str(), tally.truth, tally.precision(), tally.recall(), tally.ask_share(),
              tally.asked_right, tally.asked);
}

std::vector<ShopKind> shops() {
  return {
      {"style names", &english(), Naming::style_and_garment, Texts::long_ones, Pictures::hashed},
      {"English, no style names", &english(), Naming::garment_only, Texts::long_ones,
       Pictures::none},
      {"German", &german(), Naming::quoted_style, Texts::short_ones, Pictures::by_code},
      {"French, no texts", &french(), Naming::style_and_garment, Texts::none, Pictures::by_name},
      {"English, no cloth", &english(), Naming::style_and_garment, Texts::long_ones, Pictures::none,
       false},
      {"descriptive, one text for many", &english(), Naming::numbered, Texts::same_for_many,
       Pictures::hashed},
  };
}

Tally level_tally(const std::string& label, const Difficulty& level, std::uint64_t seed) {
  Tally all;
  for (const ShopKind& shop : shops()) {
    Tally of_shop;
    for (std::uint64_t round = 0; round < 2; ++round) {
      of_shop.add(tally_of(SeasonMaker(shop, level, seed + round).make(round == 0 ? 250 : 500)));
    }
    print(label + ": " + shop.label, of_shop);
    all.add(of_shop);
  }
  print(label, all);
  return all;
}

TEST(LikenessMatcher, EasySeasons) {
  const Tally tally = level_tally("easy", easy(), 11);
  EXPECT_GE(tally.precision(), 0.995);
  EXPECT_GE(tally.recall(), 0.98);
  EXPECT_LE(tally.ask_share(), 0.02);
}

TEST(LikenessMatcher, MiddleSeasons) {
  const Tally tally = level_tally("middle", middle(), 22);
  EXPECT_GE(tally.precision(), 0.99);
  EXPECT_GE(tally.recall(), 0.95);
  EXPECT_LE(tally.ask_share(), 0.03);
}

TEST(LikenessMatcher, HardSeasons) {
  const Tally tally = level_tally("hard", hard(), 33);
  EXPECT_GE(tally.precision(), 0.97);
  EXPECT_GE(tally.recall(), 0.6);
}

}  // namespace
}  // namespace rangebook
