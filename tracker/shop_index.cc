// Lines, sizes, prices and palette of one category.
#include "tracker/shop_index.h"

#include <algorithm>

#include "tracker/category_book.h"
#include "tracker/differ.h"
#include "tracker/interpreter.h"
#include "tracker/palette.h"
#include "tracker/price_ladder.h"
#include "tracker/size_report.h"
#include "tracker/whole_line_row.h"

namespace rangebook {
namespace {

template <typename Categories>
auto find_of(const Categories& categories, std::string_view slug) {
  return std::find_if(categories.begin(), categories.end(),
                      [slug](const auto& each) { return each.category == slug; });
}

std::vector<PriceLadder> prices_of(const Snapshot& snapshot, std::string_view category) {
  Interpreter interpreter(snapshot.shop.sizes);
  LadderTally tally;
  for (const LineState& line : snapshot.lines) {
    const bool wanted =
        category == kWholeShop || interpreter.category(line.listing.card) == category;
    if (!wanted) continue;
    const auto cleaned = without_whole_line_row(line.listing.offers);
    tally.add(cleaned ? *cleaned : line.listing.offers);
  }
  return tally.ladders();
}

}  // namespace

void read_entry(const Snapshot& snapshot, std::string_view category, ShopEntry& entry) {
  entry.capture = snapshot.capture;
  entry.looked = looks_at(snapshot.capture.scope, category);
  const CaptureSizes sizes(snapshot);
  const auto found = find_of(sizes.categories(), category);
  if (found != sizes.categories().end()) {
    entry.sizes = *found;
  } else {
    entry.sizes.category = category;
    entry.sizes.partial = !snapshot.refused.empty() || !entry.looked;
  }
  entry.prices = prices_of(snapshot, category);
  for (const CategoryPalette& each : palettes_of(snapshot)) {
    if (each.category == category) entry.palette = each.palette;
  }
}

}  // namespace rangebook
