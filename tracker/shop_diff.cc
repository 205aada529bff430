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

/// The span of `reach`, stretched by the sizes that may have been there besides.
Span possible_span(const SizeReach& reach, const std::vector<SizeReach>& doubtful) {
  const Span span = span_of(reach);
  const SizeReach* doubt = find_reach(doubtful, reach);
  if (doubt == nullptr) return span;
  const Span more = span_of(*doubt);
  return {std::min(span.low, more.low), std::max(span.high, more.high)};
}

/// True when one of the doubtful prices may undercut `entry`.
bool may_be_undercut(const PriceLadder& entry, const std::vector<PriceLadder>& doubtful) {
  return std::any_of(doubtful.begin(), doubtful.end(), [&entry](const PriceLadder& other) {
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
    if (!span_of(*after).within(possible_span(before, figures_.doubtful_before))) {
      add(ChangeKind::reach_widened, size_fact(before), size_fact(*after));
    }
    if (!span_of(before).within(possible_span(*after, figures_.doubtful_after))) {
      add(ChangeKind::reach_narrowed, size_fact(before), size_fact(*after));
    }
  }
}

void CategoryChanges::entry_prices() {
  for (const PriceLadder& before : summary_.before.prices) {
    for (const PriceLadder& after : summary_.after.prices) {
      if (after.currency != before.currency || after.entry == before.entry) continue;
      if (after.entry > before.entry ? may_be_undercut(after, figures_.doubtful_prices_after)
                                     : may_be_undercut(before, figures_.doubtful_prices_before)) {
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
