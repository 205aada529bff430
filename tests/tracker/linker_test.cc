// Linking by exact evidence, against a naive linker that looks at every pair.
#include "tracker/linker.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "tests/tracker/range_text.h"
#include "tracker/link_keys.h"

namespace rangebook {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::range;

std::vector<std::pair<std::size_t, std::size_t>> pairs(const LinkSet& links) {
  std::vector<std::pair<std::size_t, std::size_t>> result;
  for (const Link& link : links.links) result.emplace_back(link.from, link.to);
  return result;
}

std::pair<std::size_t, std::size_t> pair(std::size_t i, std::size_t j) { return {i, j}; }

LinkSet link(const Snapshot& from, const Snapshot& to,
             const std::vector<LinkDecision>& decisions = {}) {
  return link_lines(from, to, decisions, nullptr);
}

TEST(Linker, LinksEqualLineCodesAndSaysWhy) {
  const Snapshot from = range("AW25", "AB1 | Maya Dress\nAB2 | Ines Top");
  const Snapshot to = range("AW26", "AB2 | Ines Top\nAB3 | Ada Knit");
  const LinkSet links = link(from, to);
  ASSERT_THAT(pairs(links), ElementsAre(pair(1, 0)));
  EXPECT_EQ(links.links[0].sentence, "same line code AB2 in both captures");
  EXPECT_THAT(links.links[0].evidence, ElementsAre(LinkEvidence::line_code));
  EXPECT_EQ(links.links[0].authority, LinkAuthority::code);
  EXPECT_THAT(links.only_from, ElementsAre(0));
  EXPECT_THAT(links.only_to, ElementsAre(1));
}

TEST(Linker, TrimsCodes) {
  Snapshot from = range("AW25", "AB1 | Maya Dress");
  from.lines[0].listing.card.line_code = " AB1\t";
  EXPECT_THAT(pairs(link(from, range("AW26", "AB1 | Other"))), ElementsAre(pair(0, 0)));
}

TEST(Linker, ACodeThatStandsTwiceLinksNothing) {
  const Snapshot from = range("AW25", "AB1 | Maya Dress\nAB1 | Ines Top");
  const LinkSet links = link(from, range("AW26", "AB1 | Maya Dress"));
  EXPECT_THAT(links.links, IsEmpty());
  EXPECT_THAT(links.only_from, ElementsAre(0, 1));
  EXPECT_THAT(links.only_to, ElementsAre(0));
}

TEST(Linker, EqualNamesWithOtherCodesAreNotTheSameLine) {
  const LinkSet links = link(range("AW25", "AB1 | Maya Dress"), range("AW26", "XY9 | Maya Dress"));
  EXPECT_THAT(links.links, IsEmpty());
}

TEST(Linker, LinksByAddressWhatWasRecoded) {
  Snapshot from = range("AW25", "AB1 | Maya Dress");
  Snapshot to = range("AW26", "XY9 | Maya Dress");
  from.lines[0].listing.card.url = "http://www.Shop.example/p/maya/?utm_source=x#top";
  to.lines[0].listing.card.url = "https://shop.example/p/maya";
  const LinkSet links = link(from, to);
  ASSERT_THAT(pairs(links), ElementsAre(pair(0, 0)));
  EXPECT_EQ(links.links[0].sentence, "same address shop.example/p/maya in both captures");
}

TEST(Linker, AnAddressThatDiffersInItsQueryNeedsTheName) {
  Snapshot from = range("AW25", "AB1 | Maya Dress");
  Snapshot to = range("AW26", "XY9 | Ines Top");
  from.lines[0].listing.card.url = "https://shop.example/product?id=1";
  to.lines[0].listing.card.url = "https://shop.example/product?id=2";
  EXPECT_THAT(link(from, to).links, IsEmpty());
  to.lines[0].listing.card.name = "Maya Dress";
  EXPECT_THAT(pairs(link(from, to)), ElementsAre(pair(0, 0)));
}

TEST(Linker, LinksByGroupId) {
  Snapshot from = range("AW25", "AB1 | Maya Dress");
  Snapshot to = range("AW26", "XY9 | Maya");
  from.lines[0].listing.card.group_id = to.lines[0].listing.card.group_id = "G7";
  EXPECT_EQ(link(from, to).links.at(0).sentence, "same group id G7 in both captures");
}

void give_gtins(LineState& line, const std::vector<std::uint64_t>& values) {
  for (const std::uint64_t value : values) {
    line.listing.offers.gtins.emplace_back(Gtin::from_value(value));
  }
}

TEST(Linker, LinksBySharedGtins) {
  Snapshot from = range("AW25", "AB1 | Maya Dress\nAB2 | Ines Top");
  Snapshot to = range("AW26", "XY1 | Maya\nXY2 | Ines");
  give_gtins(from.lines[0], {4006381333931, 5901234123457});
  give_gtins(to.lines[0], {5901234123457, 4006381333931});
  const LinkSet links = link(from, to);
  ASSERT_THAT(pairs(links), ElementsAre(pair(0, 0)));
  EXPECT_EQ(links.links[0].sentence, "2 GTINs in common, the first is 4006381333931");
}

TEST(Linker, GtinsThatPointToTwoLinesLinkNothing) {
  Snapshot from = range("AW25", "AB1 | Maya Dress");
  Snapshot to = range("AW26", "XY1 | Maya\nXY2 | Ines");
  give_gtins(from.lines[0], {4006381333931, 5901234123457});
  give_gtins(to.lines[0], {4006381333931});
  give_gtins(to.lines[1], {5901234123457});
  EXPECT_THAT(link(from, to).links, IsEmpty());
}

TEST(Linker, NamesLinkWhereNeitherSideHasACode) {
  const LinkSet links = link(range("AW25", "- | Maya  Dress"), range("AW26", "- | Maya Dress"));
  ASSERT_THAT(pairs(links), ElementsAre(pair(0, 0)));
  EXPECT_EQ(links.links[0].authority, LinkAuthority::rule);
  EXPECT_THAT(link(range("AW25", "- | Maya Dress"), range("AW26", "AB1 | Maya Dress")).links,
              IsEmpty());
}

TEST(Linker, NamesDoNotLinkWhenClothAndPriceBothDiffer) {
  const char* const wool = "- | Maya Dress | Dresses | navy | 8 | 90 | in | 100% wool";
  const char* const cotton = "- | Maya Dress | Dresses | navy | 8 | 50 | in | 100% cotton";
  const char* const dearer_cotton = "- | Maya Dress | Dresses | navy | 8 | 90 | in | 100% cotton";
  EXPECT_THAT(link(range("AW25", wool), range("AW26", cotton)).links, IsEmpty());
  EXPECT_EQ(link(range("AW25", wool), range("AW26", dearer_cotton)).links.size(), 1U);
}

TEST(Linker, TheStylistWinsOverCodes) {
  const Snapshot from = range("AW25", "AB1 | Maya Dress\nAB2 | Ines Top");
  Snapshot to = range("AW26", "AB1 | Maya Dress\nAB2 | Ines Top");
  to.lines[0].id = 11;
  to.lines[1].id = 12;
  const LinkSet links = link(from, to, {{1, 12, true}});
  ASSERT_THAT(pairs(links), ElementsAre(pair(0, 1)));
  EXPECT_EQ(links.links[0].authority, LinkAuthority::stylist);
}

TEST(Linker, TheStylistsNoForbids) {
  const Snapshot from = range("AW25", "AB1 | Maya Dress");
  Snapshot to = range("AW26", "AB1 | Maya Dress");
  to.lines[0].id = 11;
  EXPECT_THAT(link(from, to, {{11, 1, false}}).links, IsEmpty());
}

TEST(Linker, DecisionsCarryOver) {
  const Snapshot from = range("AW25", "AB1 | Maya Dress");
  Snapshot to = range("AW26", "XY9 | Maya");
  to.lines[0].id = 3;
  // Line 2 stands in neither capture.
  EXPECT_EQ(link(from, to, {{1, 2, true}, {2, 3, true}}).links.size(), 1U);
  to.lines[0].listing.card.line_code = "AB1";
  EXPECT_THAT(link(from, to, {{1, 2, true}, {2, 3, false}}).links, IsEmpty());
}

TEST(Linker, ANoHoldsEvenWhereAChainOfYesesJoins) {
  const Snapshot from = range("AW25", "AB1 | Maya Dress");
  Snapshot to = range("AW26", "AB1 | Maya Dress");
  to.lines[0].id = 3;
  EXPECT_THAT(link(from, to, {{1, 2, true}, {2, 3, true}, {3, 1, false}}).links, IsEmpty());
}

class OneMatch : public Matcher {
 public:
  explicit OneMatch(std::size_t from, std::size_t to) : from_(from), to_(to) {}
  Matches match(const Leftovers&) const override {
    Link link;
    link.from = from_;
    link.to = to_;
    link.evidence = {LinkEvidence::likeness};
    link.authority = LinkAuthority::rule;
    link.score = 0.9;
    return {{link, link}, {link}};
  }

 private:
  std::size_t from_;
  std::size_t to_;
};

TEST(Linker, AsksTheMatcherForTheRestOnly) {
  const Snapshot from = range("AW25", "AB1 | Maya Dress\nAB2 | Ines Top");
  const Snapshot to = range("AW26", "AB1 | Maya Dress\nXY9 | Ines");
  EXPECT_THAT(pairs(link_lines(from, to, {}, std::make_unique<OneMatch>(1, 1).get())),
              ElementsAre(pair(0, 0), pair(1, 1)));
  EXPECT_THAT(pairs(link_lines(from, to, {}, std::make_unique<OneMatch>(0, 1).get())),
              ElementsAre(pair(0, 0)));
}

TEST(LinkKeys, AddressesLoseWhatChangesWithoutMeaning) {
  EXPECT_EQ(address_key("HTTPS://WWW.Shop.Example:443/P/Maya/?a=1#b"), "shop.example/P/Maya");
  EXPECT_EQ(address_key("//shop.example/p"), "shop.example/p");
  EXPECT_EQ(address_key("https://shop.example/"), "");
  EXPECT_EQ(address_key(""), "");
  EXPECT_EQ(address_query("https://shop.example/p?id=1#x"), "id=1");
}

TEST(LinkKeys, SpacesFold) {
  EXPECT_EQ(space_folded("  Maya \t\xC2\xA0 Dress\n"), "Maya Dress");
  EXPECT_EQ(space_folded("\xC2\xA0"), "");
}

// The naive linker: for each step every pair of lines left over is looked at.
class NaiveLinker {
 public:
  NaiveLinker(const Snapshot& from, const Snapshot& to, const std::vector<LinkDecision>& decisions)
      : from_(from), to_(to), decisions_(decisions) {}

  std::vector<std::pair<std::size_t, std::size_t>> run() {
    // A line that stands on both sides points to itself, which makes a decision about it unclear.
    step([this](std::size_t i, std::size_t j) {
      return id(from_, i) == id(to_, j) || said(id(from_, i), id(to_, j), true);
    });
    std::erase_if(links_,
                  [this](const auto& l) { return id(from_, l.first) == id(to_, l.second); });
    step_by([](const Listing& l) { return l.card.line_code; });
    step([this](std::size_t i, std::size_t j) { return shared_gtin(i, j); });
    step_by([](const Listing& l) { return l.card.group_id; });
    step_by([](const Listing& l) { return address_key(l.card.url); });
    step_by([](const Listing& l) {
      return l.card.line_code.empty() && l.card.group_id.empty() ? l.card.name : std::string();
    });
    std::erase_if(links_, [this](const auto& l) { return only_names_and_other_pages(l); });
    std::sort(links_.begin(), links_.end());
    return links_;
  }

 private:
  static LineId id(const Snapshot& s, std::size_t i) { return s.lines[i].id; }

  bool said(LineId a, LineId b, bool same) const {
    return std::any_of(decisions_.begin(), decisions_.end(), [&](const LinkDecision& d) {
      return d.same == same && ((d.a == a && d.b == b) || (d.a == b && d.b == a));
    });
  }

  bool only_names_and_other_pages(const std::pair<std::size_t, std::size_t>& link) const {
    const Listing& a = from_.lines[link.first].listing;
    const Listing& b = to_.lines[link.second].listing;
    const bool other = address_key(a.card.url) != address_key(b.card.url);
    const bool both = !address_key(a.card.url).empty() && !address_key(b.card.url).empty();
    const bool by_name = a.card.line_code.empty() && b.card.line_code.empty() &&
                         a.card.group_id.empty() && b.card.group_id.empty() &&
                         !shared_gtin_at_all(a, b) &&
                         !said(id(from_, link.first), id(to_, link.second), true);
    return by_name && both && other;
  }

  static bool shared_gtin_at_all(const Listing& a, const Listing& b) {
    return std::any_of(a.offers.gtins.begin(), a.offers.gtins.end(), [&b](const auto& gtin) {
      return std::find(b.offers.gtins.begin(), b.offers.gtins.end(), gtin) != b.offers.gtins.end();
    });
  }

  bool shared_gtin(std::size_t i, std::size_t j) const {
    for (const auto& gtin : from_.lines[i].listing.offers.gtins) {
      std::size_t with = 0;
      for (std::size_t k = 0; k < from_.lines.size(); ++k)
        with += open_from(k) && has(from_, k, gtin);
      std::size_t with_to = 0;
      for (std::size_t k = 0; k < to_.lines.size(); ++k) with_to += open_to(k) && has(to_, k, gtin);
      if (with == 1 && with_to == 1 && has(to_, j, gtin)) return true;
    }
    return false;
  }

  static bool has(const Snapshot& s, std::size_t i, const std::optional<Gtin>& gtin) {
    const auto& gtins = s.lines[i].listing.offers.gtins;
    return std::find(gtins.begin(), gtins.end(), gtin) != gtins.end();
  }

  template <typename KeyOf>
  void step_by(KeyOf key_of) {
    step([&](std::size_t i, std::size_t j) {
      const std::string key = key_of(from_.lines[i].listing);
      if (key.empty() || key != key_of(to_.lines[j].listing)) return false;
      return std::count_if(from_.lines.begin(), from_.lines.end(), [&](const LineState& l) {
               return open_from(static_cast<std::size_t>(&l - from_.lines.data())) &&
                      key_of(l.listing) == key;
             }) == 1;
    });
  }

  /// Links pairs that `points` to each other and to nothing else.
  template <typename Points>
  void step(Points points) {
    std::vector<std::pair<std::size_t, std::size_t>> found;
    std::vector<std::size_t> of_from(from_.lines.size());
    std::vector<std::size_t> of_to(to_.lines.size());
    for (std::size_t i = 0; i < from_.lines.size(); ++i) {
      for (std::size_t j = 0; j < to_.lines.size(); ++j) {
        if (!open_from(i) || !open_to(j) || !points(i, j)) continue;
        found.emplace_back(i, j);
        ++of_from[i];
        ++of_to[j];
      }
    }
    for (const auto& [i, j] : found) {
      if (of_from[i] != 1 || of_to[j] != 1 || said(id(from_, i), id(to_, j), false)) continue;
      links_.emplace_back(i, j);
    }
  }

  bool open_from(std::size_t i) const {
    return std::none_of(links_.begin(), links_.end(), [i](const auto& l) { return l.first == i; });
  }
  bool open_to(std::size_t j) const {
    return std::none_of(links_.begin(), links_.end(), [j](const auto& l) { return l.second == j; });
  }

  const Snapshot& from_;
  const Snapshot& to_;
  const std::vector<LinkDecision>& decisions_;
  std::vector<std::pair<std::size_t, std::size_t>> links_;
};

class Dice {
 public:
  explicit Dice(unsigned seed) : generator_(seed) {}
  unsigned below(unsigned n) { return static_cast<unsigned>(generator_() % n); }
  /// One of few texts, often none, so that collisions are common.
  std::string text(const char* prefix) {
    const unsigned number = below(8);
    return number < 3 ? std::string() : prefix + std::to_string(number);
  }

 private:
  std::mt19937 generator_;
};

Snapshot random_range(Dice& dice, LineId first_id) {
  Snapshot snapshot;
  const unsigned count = dice.below(6);
  for (unsigned i = 0; i < count; ++i) {
    LineState line;
    line.id = first_id + static_cast<LineId>(i);
    line.listing.card.line_code = dice.text("C");
    line.listing.card.group_id = dice.text("G");
    line.listing.card.name = dice.text("Name ");
    if (dice.below(3) == 0) line.listing.card.url = "http://s.example/" + dice.text("p");
    for (unsigned k = dice.below(3); k > 0; --k) {
      line.listing.offers.gtins.emplace_back(Gtin::from_value(100 + dice.below(6)));
    }
    snapshot.lines.push_back(std::move(line));
  }
  return snapshot;
}

TEST(Linker, AgreesWithLookingAtEveryPair) {
  for (unsigned seed = 0; seed < 3000; ++seed) {
    Dice dice(seed);
    const Snapshot from = random_range(dice, 1);
    const Snapshot to = random_range(dice, 4);
    std::vector<LinkDecision> decisions;
    // Each line stands in at most one decision: what chains mean is tested by name above.
    if (dice.below(2) == 0) decisions.push_back({1, 7 + dice.below(3), dice.below(2) == 0});
    if (dice.below(2) == 0) decisions.push_back({2, 4 + dice.below(2), dice.below(2) == 0});
    NaiveLinker naive(from, to, decisions);
    const LinkSet links = link(from, to, decisions);
    ASSERT_EQ(pairs(links), naive.run()) << "seed " << seed;
    ASSERT_EQ(links.links.size() + links.only_from.size(), from.lines.size());
    ASSERT_EQ(links.links.size() + links.only_to.size(), to.lines.size());
  }
}

}  // namespace
}  // namespace rangebook
