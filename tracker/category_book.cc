// Collecting the figures of each category.
#include "tracker/category_book.h"

#include <algorithm>
#include <string>

#include "tracker/line_prices.h"
#include "tracker/price_index.h"

namespace rangebook {
namespace {

std::optional<IndexFact> index_of(const std::map<Currency, std::vector<PricePair>>& prices) {
  const auto most = std::max_element(
      prices.begin(), prices.end(),
      [](const auto& a, const auto& b) { return a.second.size() < b.second.size(); });
  return most == prices.end() ? std::nullopt : elementary_indices(most->second);
}

}  // namespace

// A scarf without sizes leaves no size of the shop in doubt.
void CategoryBook::Side::merge(const Side& other, bool sized) {
  lines += other.lines;
  outside += other.outside;
  unpriced += other.unpriced;
  unsized += other.unsized;
  reach.merge(other.reach);
  prices.merge(other.prices);
  doubtful.merge(other.doubtful);
  doubtful_prices.merge(other.doubtful_prices);
  if (sized) hidden += other.unsized;
  any_size = any_size || (sized && other.any_size);
  any_price = any_price || other.any_price;
}

CategorySide CategoryBook::Side::summary(bool partial) const {
  CategorySide side{lines, reach.reach(), prices.ladders(), unpriced, unsized, outside, false};
  side.partial = partial || hidden > 0;
  if (side.partial) add_intervals(side.reach);
  return side;
}

CategoryDoubts CategoryBook::Side::doubts() const {
  return {doubtful.reach(), doubtful_prices.ladders(), any_size, any_price};
}

void CategoryBook::Entry::merge(std::string_view slug, const Entry& other) {
  before.merge(other.before, comes_in_sizes(slug));
  after.merge(other.after, comes_in_sizes(slug));
  counts.carried += other.counts.carried;
  counts.added += other.counts.added;
  counts.dropped += other.counts.dropped;
  counts.returned += other.counts.returned;
  counts.unseen_then += other.counts.unseen_then;
  counts.not_covered += other.counts.not_covered;
  for (const auto& [currency, prices] : other.index) {
    std::vector<PricePair>& own = index[currency];
    own.insert(own.end(), prices.begin(), prices.end());
  }
}

bool CategoryBook::Entry::empty() const {
  return before.lines + before.outside + after.lines + after.outside == 0;
}

CategoryFigures CategoryBook::Entry::figures(std::string_view slug,
                                             const CaptureLimits& limits) const {
  const bool some_only = slug == kWholeShop && !limits.whole_range;
  CategoryFigures figures{counts, before.doubts(), after.doubts()};
  CategorySummary& summary = figures.summary;
  summary.category = slug;
  summary.before = before.summary(some_only || limits.rows_refused_before);
  summary.after = after.summary(some_only || limits.rows_refused_after);
  summary.index = index_of(index);
  summary.lines_then = before.lines + before.outside;
  summary.lines_now = after.lines + after.outside;
  return figures;
}

void CategoryBook::add(Side& side, const Listing& listing, const SizeRun& sizes) {
  ++side.lines;
  if (!sizes.stated) {
    ++side.unsized;
    ++side.hidden;
  }
  if (!lowest_selling(listing.offers) || !listing.offers.currency) ++side.unpriced;
  side.reach.add(sizes, listing.offers);
  side.prices.add(listing.offers);
}

void CategoryBook::alone(Side& side, const Listing& listing, const SizeRun& sizes) {
  side.any_size = side.any_size || !sizes.stated;
  side.any_price = side.any_price || !lowest_selling(listing.offers);
}

void CategoryBook::add_before(std::string_view category, const Listing& then,
                              const SizeRun& sizes) {
  add(entries_[category].before, then, sizes);
}

void CategoryBook::add_after(std::string_view category, const Listing& now, const SizeRun& sizes) {
  add(entries_[category].after, now, sizes);
}

void CategoryBook::doubt_before(std::string_view category, const Listing& now,
                                const SizeRun& sizes) {
  entries_[category].before.doubtful.add(sizes, now.offers);
}

void CategoryBook::doubt_after(std::string_view category, const Listing& then,
                               const SizeRun& sizes) {
  entries_[category].after.doubtful.add(sizes, then.offers);
}

void CategoryBook::doubt_prices_before(std::string_view category, const Listing& now) {
  entries_[category].before.doubtful_prices.add(now.offers);
}

void CategoryBook::doubt_prices_after(std::string_view category, const Listing& then) {
  entries_[category].after.doubtful_prices.add(then.offers);
}

void CategoryBook::alone_before(std::string_view category, const Listing& then,
                                const SizeRun& sizes) {
  alone(entries_[category].before, then, sizes);
}

void CategoryBook::alone_after(std::string_view category, const Listing& now,
                               const SizeRun& sizes) {
  alone(entries_[category].after, now, sizes);
}

void CategoryBook::add_carried(std::string_view then, std::string_view now,
                               const std::optional<LineIndexPrices>& prices) {
  Entry& own = entries_[now];
  ++own.counts.carried;
  if (then != now) {
    ++own.counts.moved_in;
    ++entries_[then].counts.moved_out;
  }
  if (prices) own.index[prices->currency].push_back(prices->prices);
}

std::vector<CategoryFigures> CategoryBook::figures(const CaptureLimits& limits) const {
  Entry whole;
  for (const auto& [slug, each] : entries_) whole.merge(slug, each);
  std::vector<CategoryFigures> figures{whole.figures(kWholeShop, limits)};
  for (const auto& [slug, each] : entries_) {
    if (!each.empty()) figures.push_back(each.figures(slug, limits));
  }
  return figures;
}

}  // namespace rangebook
