// What linking by likeness must know of the trade, on ranges small enough to read, and what must
// not change its answers.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>

#include "tests/tracker/likeness/invented_seasons.h"
#include "tests/tracker/range_text.h"
#include "tracker/differ.h"
#include "tracker/likeness/likeness_matcher.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Pair;
using testing::range;

LinkSet match(const Snapshot& from, const Snapshot& to,
              const std::vector<LinkDecision>& decisions = {}) {
  return link_lines(from, to, decisions, std::make_unique<LikenessMatcher>().get());
}

/// From-index to to-index.
std::map<std::size_t, std::size_t> pairs(const LinkSet& links) {
  std::map<std::size_t, std::size_t> result;
  for (const Link& link : links.links) result[link.from] = link.to;
  return result;
}

constexpr const char* kMaya = "AB1 | Maya Dress | Dresses | navy, rust | 8, 10, 12 | 80 | in | ";

TEST(LikenessRules, AWordMoreInTheNameIsTheSameLine) {
  const LinkSet links =
      match(range("AW25", std::string(kMaya) + "100% viscose"),
            range("AW26",
                  "ZZ7 | Maya Midi Dress | Dresses | navy, moss | 8, 10, 12 | 85 | in | 100% "
                  "viscose\nZZ8 | Ines Top | Tops | ecru | S, M | 40 | in | 100% cotton"));
  ASSERT_THAT(pairs(links), ElementsAre(Pair(0, 0)));
  EXPECT_EQ(links.links[0].authority, LinkAuthority::rule);
  EXPECT_THAT(links.links[0].evidence, ElementsAre(LinkEvidence::likeness));
  EXPECT_EQ(links.links[0].sentence,
            "the names share words, same composition 100% viscose, colours in common, price 80.00 "
            "-> 85.00 EUR, same sizes");
}

TEST(LikenessRules, AnEqualNameAloneNeverLinks) {
  const Snapshot from = range("AW25", std::string(kMaya) + "100% viscose");
  const Snapshot to =
      range("AW26", "ZZ7 | Maya Dress | Dresses | navy | 8, 10, 12 | 140 | in | 100% wool");
  const LinkSet links = match(from, to);
  EXPECT_THAT(links.links, IsEmpty());
  EXPECT_THAT(links.ask, IsEmpty());
}

TEST(LikenessRules, ATextThatStillHasTheOldNameIsTheSameText) {
  Snapshot from = range("AW25", "- | Mabel Ribbed Dress\n- | Greta Pleated Skirt");
  Snapshot to = range("AW26", "- | Odette Ribbed Dress\n- | Greta Pleated Skirt");
  from.lines[0].listing.detail.description = "The Mabel has pintucks and a keyhole back.";
  to.lines[0].listing.detail.description = "The Mabel has pintucks and a keyhole back.";
  EXPECT_THAT(pairs(match(from, to)), ElementsAre(Pair(0, 0), Pair(1, 1)));
}

TEST(LikenessRules, WhatTheHouseAlwaysSaysIsNoLikeness) {
  const std::string house = " Every mill is visited twice a year and we know who sews.";
  std::string then = "- | Tilda Coat\n- | Romy Belt Coat";
  std::string now = "- | Nell Coat\n- | Romy Belt Coat";
  for (char c = 'a'; c < 'm'; ++c) {
    then += std::string("\n- | Style ") + c + c + " Coat";
    now += std::string("\n- | Style ") + c + c + " Coat";
  }
  Snapshot from = range("AW25", then);
  Snapshot to = range("AW26", now);
  for (std::size_t i = 0; i < from.lines.size(); ++i) {
    const std::string own = i == 0 ? "" : " Cut number " + std::to_string(i) + ".";
    from.lines[i].listing.detail.description = (i == 0 ? "With a hood." : own) + house;
    to.lines[i].listing.detail.description = (i == 0 ? "With two pockets." : own) + house;
  }
  const LinkSet links = match(from, to);
  EXPECT_FALSE(pairs(links).contains(0));
  EXPECT_EQ(links.links.size(), from.lines.size() - 1);
}

TEST(LikenessRules, EqualNamesWithoutCodesLinkInTheSmallestRange) {
  EXPECT_EQ(match(range("AW25", "- | Maya Dress"), range("AW26", "- | Maya Dress")).links.size(),
            1);
  EXPECT_THAT(match(range("AW25", "- | Maya Dress"), range("AW26", "- | Ines Top")).links,
              IsEmpty());
}

TEST(LikenessRules, AColourwayOfItsOwnLeavesTheLineItsPartner) {
  const LinkSet links =
      match(range("AW25",
                  "AB1 | Maya Dress | Dresses | navy, rust, moss | 8, 10 | 80 | in | 100% viscose"),
            range("AW26",
                  "ZZ7 | Maya Dress Rust | Dresses | rust | 8, 10 | 80 | in | 100% viscose\n"
                  "ZZ8 | Maya Dress | Dresses | navy, moss | 8, 10 | 80 | in | 100% viscose"));
  EXPECT_THAT(pairs(links), ElementsAre(Pair(0, 1)));
  EXPECT_THAT(links.only_to, ElementsAre(0));
}

TEST(LikenessRules, TwoEquallyGoodPartnersAreAskedAbout) {
  const std::string twin = "| Maya Dress | Dresses | navy | 8, 10 | 80 | in | 100% viscose";
  const Snapshot from = range("AW25", "AB1 " + twin);
  const Snapshot to = range("AW26", "ZZ7 " + twin + "\nZZ8 " + twin);
  const LinkSet links = match(from, to);
  EXPECT_THAT(links.links, IsEmpty());
  ASSERT_EQ(links.ask.size(), 1);
  EXPECT_EQ(links.ask[0].score, 0.5);
  const auto notes = diff_snapshots(from, to, links, {}).coverage.notes;
  EXPECT_THAT(notes, ::testing::Contains(HasSubstr("1 pair waits for a yes or no")));
}

TEST(LikenessRules, ANoIsNeitherLinkedNorAskedAgain) {
  const Snapshot from = range("AW25", std::string(kMaya) + "100% viscose");
  Snapshot to = range("AW26", std::string(kMaya) + "100% viscose");
  to.lines[0].id = 9;
  to.lines[0].listing.card.line_code = "ZZ7";
  ASSERT_EQ(match(from, to).links.size(), 1);
  const LinkSet links = match(from, to, {{1, 9, false}});
  EXPECT_THAT(links.links, IsEmpty());
  EXPECT_THAT(links.ask, IsEmpty());
}

// --- What must not change an answer

testing::SeasonPair seasons(std::uint64_t seed) {
  const testing::ShopKind shop{"style names", &testing::english()};
  return testing::SeasonMaker(shop, testing::hard(), testing::season_seed(seed)).make(80);
}

TEST(LikenessRules, SwappingTheSidesSwapsTheLinks) {
  for (const std::uint64_t seed : {1U, 2U, 3U}) {
    const auto both = seasons(seed);
    const LinkSet there = match(both.from, both.to);
    const LinkSet back = match(both.to, both.from);
    ASSERT_FALSE(there.links.empty());
    std::map<std::size_t, std::size_t> mirrored;
    for (const Link& link : back.links) mirrored[link.to] = link.from;
    EXPECT_EQ(pairs(there), mirrored);
    EXPECT_EQ(there.ask.size(), back.ask.size());
  }
}

TEST(LikenessRules, TheOrderOfLinesIsIrrelevant) {
  for (const std::uint64_t seed : {4U, 5U, 6U}) {
    const auto both = seasons(seed);
    Snapshot shuffled = both.to;
    std::mt19937_64 random(seed);
    std::shuffle(shuffled.lines.begin(), shuffled.lines.end(), random);
    std::map<std::size_t, LineId> straight;
    std::map<std::size_t, LineId> mixed;
    for (const auto& [i, j] : pairs(match(both.from, both.to))) straight[i] = both.to.lines[j].id;
    for (const auto& [i, j] : pairs(match(both.from, shuffled))) mixed[i] = shuffled.lines[j].id;
    EXPECT_EQ(straight, mixed);
  }
}

}  // namespace
}  // namespace rangebook
