// Collecting the figures of each category.
#include "tracker/category_book.h"

#include <algorithm>
#include <string>

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

void CategoryBook::Side::merge(const Side& other) {
  lines += other.lines;
  reach.merge(other.reach);
  doubtful.merge(other.doubtful);
  prices.merge(other.prices);
  doubtful_prices.merge(other.doubtful_prices);
}

CategorySide CategoryBook::Side::summary() const {
  return {lines, reach.reach(), prices.ladders()};
}

void CategoryBook::Entry::merge(const Entry& other) {
  before.merge(other.before);
  after.merge(other.after);
  carried += other.carried;
  added += other.added;
  dropped += other.dropped;
  for (const auto& [currency, prices] : other.index) {
    std::vector<PricePair>& own = index[currency];
    own.insert(own.end(), prices.begin(), prices.end());
  }
}

CategoryFigures CategoryBook::Entry::figures(std::string_view slug) const {
  CategoryFigures figures;
  figures.summary = {std::string(slug), before.summary(), after.summary(), carried, added,
                     dropped,           index_of(index)};
  figures.doubtful_before = before.doubtful.reach();
  figures.doubtful_after = after.doubtful.reach();
  figures.doubtful_prices_before = before.doubtful_prices.ladders();
  figures.doubtful_prices_after = after.doubtful_prices.ladders();
  return figures;
}

void CategoryBook::add(Side& side, const Listing& listing) {
  ++side.lines;
  side.reach.add(interpreter_.size_run(listing.offers.sizes), listing.offers);
  side.prices.add(listing.offers);
}

void CategoryBook::add_before(const Listing& then) { add(entry(then).before, then); }

void CategoryBook::add_after(const Listing& now) { add(entry(now).after, now); }

void CategoryBook::doubt_before(const Listing& now) {
  entry(now).before.doubtful.add(interpreter_.size_run(now.offers.sizes), now.offers);
}

void CategoryBook::doubt_after(const Listing& then) {
  entry(then).after.doubtful.add(interpreter_.size_run(then.offers.sizes), then.offers);
}

void CategoryBook::doubt_prices_before(const Listing& now) {
  entry(now).before.doubtful_prices.add(now.offers);
}

void CategoryBook::doubt_prices_after(const Listing& then) {
  entry(then).after.doubtful_prices.add(then.offers);
}

void CategoryBook::add_carried(const Listing& now, const std::optional<LineIndexPrices>& prices) {
  Entry& own = entry(now);
  ++own.carried;
  if (prices) own.index[prices->currency].push_back(prices->prices);
}

void CategoryBook::add_new(const Listing& now) { ++entry(now).added; }

void CategoryBook::add_dropped(const Listing& then) { ++entry(then).dropped; }

std::vector<CategoryFigures> CategoryBook::figures() const {
  Entry whole;
  for (const auto& [slug, each] : entries_) whole.merge(each);
  std::vector<CategoryFigures> figures{whole.figures(kWholeShop)};
  for (const auto& [slug, each] : entries_) {
    if (!each.empty()) figures.push_back(each.figures(slug));
  }
  return figures;
}

}  // namespace rangebook
