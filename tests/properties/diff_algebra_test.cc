// Laws of the differ: nothing changed against itself, swapping the sides swaps the changes, input
// order is irrelevant, counts add up, and applying a difference to the old range gives the new one.
// RANGEBOOK_SEED runs other ranges.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "tests/properties/random_range.h"
#include "tracker/colour_parser.h"
#include "tracker/differ.h"
#include "tracker/interpreter.h"
#include "tracker/linker.h"
#include "tracker/size_diff.h"

namespace rangebook {
namespace {

using testing::Random;
using testing::random_range;
using testing::random_scope;

constexpr int kRounds = 100;

ChangeSet compare(const Snapshot& from, const Snapshot& to) {
  return diff_snapshots(from, to, link_lines(from, to, {}, nullptr), {});
}

/// Calls `check(random)` for many seeds and names the seed that failed.
template <typename Check>
void for_many(Check check) {
  const std::uint64_t first = testing::seed_or(20260901);
  for (int round = 0; round < kRounds && !::testing::Test::HasFailure(); ++round) {
    const std::uint64_t seed = first + static_cast<std::uint64_t>(round);
    SCOPED_TRACE("RANGEBOOK_SEED=" + std::to_string(seed));
    Random random(seed);
    check(random);
  }
}

TEST(DiffAlgebra, NothingChangedAgainstItself) {
  for_many([](Random& random) {
    const Snapshot range = random_range(random, 1);
    const ChangeSet set = compare(range, range);
    EXPECT_TRUE(set.changes.empty());
    EXPECT_EQ(set.reconciliation.carried, range.lines.size());
  });
}

// --- Swapping the sides

ChangeKind mirrored(ChangeKind kind) {
  static const std::map<ChangeKind, ChangeKind> kPairs{
      {ChangeKind::line_new, ChangeKind::line_dropped},
      {ChangeKind::colour_added, ChangeKind::colour_dropped},
      {ChangeKind::sizes_widened, ChangeKind::sizes_narrowed},
      {ChangeKind::size_gap_filled, ChangeKind::size_gap_opened},
      {ChangeKind::fit_range_added, ChangeKind::fit_range_dropped},
      {ChangeKind::price_up, ChangeKind::price_down},
      {ChangeKind::marked_down, ChangeKind::markdown_ended},
      {ChangeKind::stock_out, ChangeKind::stock_back},
      {ChangeKind::reach_widened, ChangeKind::reach_narrowed},
  };
  for (const auto& [one, other] : kPairs) {
    if (kind == one) return other;
    if (kind == other) return one;
  }
  return kind;
}

using Essence = std::tuple<ChangeKind, std::string, std::optional<Fact>, std::optional<Fact>>;

/// Kinds, subjects and facts. Indices mirror only up to rounding and are checked on their own.
std::multiset<Essence> essence(const ChangeSet& set, bool mirror) {
  std::multiset<Essence> result;
  for (const Change& change : set.changes) {
    if (change.kind == ChangeKind::price_index) continue;
    const std::string subject = change.line ? change.line->code : change.category;
    if (mirror) {
      result.emplace(mirrored(change.kind), subject, change.after, change.before);
    } else {
      result.emplace(change.kind, subject, change.before, change.after);
    }
  }
  return result;
}

TEST(DiffAlgebra, SwappingTheSidesSwapsTheChanges) {
  for_many([](Random& random) {
    Snapshot from = random_range(random, 1);
    Snapshot to = random_range(random, 2);
    from.capture.scope = random_scope(random);
    to.capture.scope = random_scope(random);
    if (random.one_in(3)) to.refused.push_back({"L" + std::to_string(random.below(8)), ""});
    EXPECT_EQ(essence(compare(from, to), false), essence(compare(to, from), true));
  });
}

TEST(DiffAlgebra, JevonsReversesInTime) {
  for_many([](Random& random) {
    const Snapshot from = random_range(random, 1);
    const Snapshot to = random_range(random, 2);
    const auto there = compare(from, to).categories.at(0).index;
    const auto back = compare(to, from).categories.at(0).index;
    ASSERT_EQ(there.has_value(), back.has_value());
    if (!there) return;
    EXPECT_NEAR(static_cast<double>(there->jevons) * static_cast<double>(back->jevons) / 1e12, 1,
                4e-6);
  });
}

TEST(DiffAlgebra, SwappingSwapsWhateverTheSizesMean) {
  for_many([](Random& random) {
    Snapshot from = random_range(random, 1);
    Snapshot to = random_range(random, 2);
    if (random.one_in(2)) from.shop.sizes = to.shop.sizes = SizeSystem::unknown;
    testing::mix_sizes(random, from);
    testing::mix_sizes(random, to);
    if (random.one_in(2)) to = testing::less_detailed(random, to);
    EXPECT_EQ(essence(compare(from, to), false), essence(compare(to, from), true));
  });
}

// --- Partial captures

bool is_presence(ChangeKind kind) { return kind == ChangeKind::line_not_covered; }

TEST(DiffAlgebra, ALessCarefulLookAtTheSameRangeChangesNothing) {
  for_many([](Random& random) {
    const Snapshot range = random_range(random, 1);
    const Snapshot seen = testing::less_detailed(random, range);
    for (const ChangeSet& set : {compare(range, seen), compare(seen, range)}) {
      for (const Change& change : set.changes) {
        EXPECT_TRUE(is_presence(change.kind)) << to_string(change.kind);
      }
      EXPECT_TRUE(set.reconciliation.adds_up());
    }
  });
}

TEST(DiffAlgebra, EveryCategoryAddsUp) {
  for_many([](Random& random) {
    Snapshot from = random_range(random, 1);
    Snapshot to = testing::less_detailed(random, random_range(random, 2));
    from.capture.scope = random_scope(random);
    to.capture.scope = random_scope(random);
    const ChangeSet set = compare(from, to);
    for (const CategorySummary& summary : set.categories) {
      EXPECT_TRUE(summary.adds_up()) << summary.category;
      for (const CategorySide* side : {&summary.before, &summary.after}) {
        std::uint32_t priced = side->unpriced;
        for (const PriceLadder& ladder : side->prices) priced += ladder.lines;
        EXPECT_EQ(priced, side->lines) << summary.category;
      }
    }
    const CategorySummary& all = set.categories.at(0);
    const Reconciliation& sums = set.reconciliation;
    EXPECT_EQ(all.lines_then, sums.lines_then);
    EXPECT_EQ(all.lines_now, sums.lines_now);
    EXPECT_EQ(all.unseen_then, sums.unseen_then);
    EXPECT_EQ(all.not_covered, sums.not_covered);
  });
}

// --- Order

TEST(DiffAlgebra, InputOrderIsIrrelevant) {
  for_many([](Random& random) {
    Snapshot from = random_range(random, 1);
    Snapshot to = random_range(random, 2);
    const ChangeSet straight = compare(from, to);
    for (Snapshot* side : {&from, &to}) {
      random.shuffle(side->lines);
      for (LineState& line : side->lines) random.shuffle(line.listing.offers.offers);
    }
    EXPECT_EQ(compare(from, to), straight);
  });
}

TEST(DiffAlgebra, ChangesAreOrderedByKindCodeAndName) {
  for_many([](Random& random) {
    const ChangeSet set = compare(random_range(random, 1), random_range(random, 2));
    const auto key = [](const Change& change) {
      const LineRef line = change.line.value_or(LineRef{});
      return std::tuple(change.kind, line.code, line.name);
    };
    EXPECT_TRUE(
        std::is_sorted(set.changes.begin(), set.changes.end(),
                       [&key](const Change& a, const Change& b) { return key(a) < key(b); }));
  });
}

// --- Counting

TEST(DiffAlgebra, EverythingAddsUp) {
  for_many([](Random& random) {
    Snapshot from = random_range(random, 1);
    Snapshot to = random_range(random, 2);
    from.capture.scope = random_scope(random);
    to.capture.scope = random_scope(random);
    const ChangeSet set = compare(from, to);
    EXPECT_TRUE(set.reconciliation.adds_up());
    EXPECT_EQ(set.reconciliation.lines_then, from.lines.size());
    EXPECT_EQ(set.reconciliation.lines_now, to.lines.size());
    std::size_t counted = 0;
    for (const std::uint32_t count : set.counts) counted += count;
    EXPECT_EQ(counted, set.changes.size());
    std::uint32_t carried = 0;
    for (std::size_t i = 1; i < set.categories.size(); ++i) carried += set.categories[i].carried;
    EXPECT_EQ(carried, set.reconciliation.carried);
    EXPECT_EQ(set.categories.at(0).carried, set.reconciliation.carried);
  });
}

TEST(DiffAlgebra, NothingIsGoneOrNewOutsideTheScope) {
  for_many([](Random& random) {
    Snapshot from = random_range(random, 1);
    Snapshot to = random_range(random, 2);
    from.capture.scope = random_scope(random);
    to.capture.scope = random_scope(random);
    for (const Change& change : compare(from, to).changes) {
      const std::string category = change.line ? change.line->category : "";
      if (change.kind == ChangeKind::line_dropped) {
        EXPECT_TRUE(scope_covers(to.capture.scope, category)) << category;
      }
      if (change.kind == ChangeKind::line_new) {
        EXPECT_TRUE(scope_covers(from.capture.scope, category)) << category;
      }
    }
  });
}

// --- Applying a difference

using Variant = std::pair<std::string, std::string>;  // colour and size

/// What the changes of a line have to tell.
struct LineModel {
  std::set<std::string> colours;
  std::map<FitRange, std::vector<std::string>> sizes;
  std::map<Variant, MinorUnits> prices;

  bool operator==(const LineModel&) const = default;
};
using RangeModel = std::map<std::string, LineModel>;

RangeModel model_of(const Snapshot& snapshot) {
  RangeModel range;
  Interpreter interpreter(snapshot.shop.sizes);
  for (const LineState& line : snapshot.lines) {
    const LineOffers& offers = line.listing.offers;
    LineModel& model = range[line.listing.card.line_code];
    model.colours = {offers.colours.begin(), offers.colours.end()};
    const SizeRun& run = interpreter.size_run(offers.sizes);
    for (const SizeGroup& group : run.groups) model.sizes[group.fit] = size_fact(run, group).labels;
    for (const Offer& offer : offers.offers) {
      const auto price = undiscounted(offer);
      if (price) model.prices[{offers.colours[offer.colour], offers.sizes[offer.size]}] = *price;
    }
  }
  return range;
}

/// Only variants both have can be rebuilt; a new variant's price stands in no change.
void keep_common_prices(RangeModel& range, const RangeModel& other) {
  for (auto& [code, line] : range) {
    const auto found = other.find(code);
    if (found == other.end()) continue;
    std::erase_if(line.prices,
                  [&](const auto& price) { return !found->second.prices.contains(price.first); });
  }
}

bool names(const std::vector<std::string>& list, const std::string& label) {
  return list.empty() || std::find(list.begin(), list.end(), label) != list.end();
}

void apply_price(LineModel& line, const PriceFact& before, const PriceFact& after,
                 std::set<Variant>& touched) {
  for (auto& [variant, price] : line.prices) {
    if (!names(before.colours, variant.first) || !names(before.sizes, variant.second)) continue;
    EXPECT_TRUE(touched.insert(variant).second) << "one variant in two changes";
    EXPECT_EQ(price, before.amount.minor);
    price = after.amount.minor;
  }
}

void apply_sizes(LineModel& line, const Change& change) {
  if (!change.after) {
    line.sizes.erase(std::get<SizeFact>(*change.before).fit);
    return;
  }
  const SizeFact& after = std::get<SizeFact>(*change.after);
  line.sizes[after.fit] = after.labels;
}

void apply(RangeModel& range, const Change& change, const RangeModel& now,
           std::map<std::string, std::set<Variant>>& touched) {
  if (!change.line) return;
  const std::string& code = change.line->code;
  switch (change.kind) {
    case ChangeKind::line_new:
      EXPECT_FALSE(range.contains(code));
      range[code] = now.at(code);
      break;
    case ChangeKind::line_dropped:
      EXPECT_EQ(range.erase(code), 1U);
      break;
    case ChangeKind::colour_added:
      range[code].colours.insert(std::get<ColourFact>(*change.after).colour);
      break;
    case ChangeKind::colour_dropped:
      range[code].colours.erase(std::get<ColourFact>(*change.before).colour);
      break;
    case ChangeKind::sizes_widened:
    case ChangeKind::sizes_narrowed:
    case ChangeKind::size_gap_filled:
    case ChangeKind::size_gap_opened:
    case ChangeKind::fit_range_added:
    case ChangeKind::fit_range_dropped:
      apply_sizes(range[code], change);
      break;
    case ChangeKind::price_up:
    case ChangeKind::price_down:
      apply_price(range[code], std::get<PriceFact>(*change.before),
                  std::get<PriceFact>(*change.after), touched[code]);
      break;
    case ChangeKind::line_returned:
    case ChangeKind::line_renamed:
    case ChangeKind::line_recoded:
    case ChangeKind::line_not_covered:
    case ChangeKind::marked_down:
    case ChangeKind::markdown_changed:
    case ChangeKind::markdown_ended:
    case ChangeKind::composition_changed:
    case ChangeKind::category_moved:
    case ChangeKind::stock_out:
    case ChangeKind::stock_back:
    case ChangeKind::terms_changed:
    case ChangeKind::reach_widened:
    case ChangeKind::reach_narrowed:
    case ChangeKind::entry_price_changed:
    case ChangeKind::price_index:
      break;
  }
}

bool shares_a_variant(const LineModel& a, const LineModel& b) {
  return std::any_of(a.prices.begin(), a.prices.end(),
                     [&b](const auto& price) { return b.prices.contains(price.first); });
}

TEST(DiffAlgebra, ApplyingTheDifferenceGivesTheNewRange) {
  for_many([](Random& random) {
    const Snapshot from = random_range(random, 1);
    const Snapshot to = random_range(random, 2);
    RangeModel range = model_of(from);
    RangeModel now = model_of(to);
    // Without a common priced variant, prices are compared line by line: no variant to rebuild.
    for (auto& [code, line] : range) {
      if (now.contains(code) && !shares_a_variant(line, now.at(code))) line.prices.clear();
    }
    keep_common_prices(range, now);
    keep_common_prices(now, range);
    std::map<std::string, std::set<Variant>> touched;
    for (const Change& change : compare(from, to).changes) apply(range, change, now, touched);
    EXPECT_EQ(range, now);
  });
}

}  // namespace
}  // namespace rangebook
