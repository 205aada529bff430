// Comparing the figures of a category.
#include "tracker/shop_diff.h"

#include <algorithm>
#include <utility>

#include "tracker/line_pair.h"

namespace rangebook {
namespace {

const SizeReach* find_reach(const std::vector<SizeReach>& reaches, const SizeReach& like) {
  const auto found = std::find_if(reaches.begin(), reaches.end(), [&like](const SizeReach& reach) {
    return reach.system == like.system && reach.fit == like.fit;
  });
  return found == reaches.end() ? nullptr : &*found;
}

/// From the lowest to the highest position of a reach.
struct Span {
  std::int32_t low = 0;
  std::int32_t high = 0;

  bool within(const Span& other) const { return low >= other.low && high <= other.high; }
};

Span span_of(const SizeReach& reach) {
  Span span{reach.steps.front().size.low, reach.steps.front().size.high};
  for (const ReachStep& step : reach.steps) {
    span = {std::min(span.low, step.size.low), std::max(span.high, step.size.high)};
  }
  return span;
}

/// `seen` reaches beyond `reach` and beyond the sizes that may have been there besides.
bool surely_beyond(const SizeReach& seen, const SizeReach& reach, const CategoryDoubts& doubts) {
  if (doubts.any_size) return false;
  Span span = span_of(reach);
  if (const SizeReach* doubt = find_reach(doubts.sizes, reach)) {
    const Span more = span_of(*doubt);
    span = {std::min(span.low, more.low), std::max(span.high, more.high)};
  }
  return !span_of(seen).within(span);
}

/// True when a price that nobody could read may undercut `entry`.
bool may_be_undercut(const PriceLadder& entry, const CategoryDoubts& doubts) {
  return doubts.any_price ||
         std::any_of(doubts.prices.begin(), doubts.prices.end(),
                     [&entry](const PriceLadder& other) {
                       return other.currency == entry.currency && other.entry < entry.entry;
                     });
}

class CategoryChanges {
 public:
  CategoryChanges(const CategoryFigures& figures, const CaptureInfo& from, const CaptureInfo& to,
                  std::vector<Change>& changes)
      : figures_(figures), summary_(figures.summary), from_(from), to_(to), changes_(changes) {}

  void reach();
  void entry_prices();
  void price_index();

 private:
  void add(ChangeKind kind, Fact before, Fact after) {
    changes_.push_back({kind,
                        std::nullopt,
                        summary_.category,
                        std::move(before),
                        std::move(after),
                        {sighting_of(from_), sighting_of(to_), {}}});
  }

  const CategoryFigures& figures_;
  const CategorySummary& summary_;
  const CaptureInfo& from_;
  const CaptureInfo& to_;
  std::vector<Change>& changes_;
};

void CategoryChanges::reach() {
  for (const SizeReach& before : summary_.before.reach) {
    const SizeReach* after = find_reach(summary_.after.reach, before);
    if (after == nullptr) continue;
    if (surely_beyond(*after, before, figures_.before)) {
      add(ChangeKind::reach_widened, size_fact(before), size_fact(*after));
    }
    if (surely_beyond(before, *after, figures_.after)) {
      add(ChangeKind::reach_narrowed, size_fact(before), size_fact(*after));
    }
  }
}

void CategoryChanges::entry_prices() {
  for (const PriceLadder& before : summary_.before.prices) {
    for (const PriceLadder& after : summary_.after.prices) {
      if (after.currency != before.currency || after.entry == before.entry) continue;
      if (after.entry > before.entry ? may_be_undercut(after, figures_.after)
                                     : may_be_undercut(before, figures_.before)) {
        continue;
      }
      add(ChangeKind::entry_price_changed,
          PriceFact{{before.entry, before.currency}, {}, {}, std::nullopt},
          PriceFact{{after.entry, after.currency}, {}, {}, std::nullopt});
    }
  }
}

void CategoryChanges::price_index() {
  if (!summary_.index || summary_.index->jevons == IndexFact{}.jevons) return;
  IndexFact base;
  base.lines = summary_.index->lines;
  add(ChangeKind::price_index, base, *summary_.index);
}

}  // namespace

void diff_category(const CategoryFigures& figures, const CaptureInfo& from, const CaptureInfo& to,
                   std::vector<Change>& changes) {
  CategoryChanges category(figures, from, to, changes);
  category.reach();
  category.entry_prices();
  category.price_index();
}

}  // namespace rangebook
