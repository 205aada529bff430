// Figures by category: size reach, prices and counts of both captures, and the price index.
#pragma once

#include <map>
#include <optional>
#include <string_view>
#include <vector>

#include "schema/change.h"
#include "schema/snapshot.h"
#include "tracker/interpreter.h"
#include "tracker/price_diff.h"
#include "tracker/price_ladder.h"
#include "tracker/size_reach.h"

namespace rangebook {

/// Slug under which the whole shop is summed up.
inline constexpr std::string_view kWholeShop = "all";

/// A category's figures, and the sizes and prices that either capture may have besides what it
/// shows.
struct CategoryFigures {
  CategorySummary summary;
  std::vector<SizeReach> doubtful_before;
  std::vector<SizeReach> doubtful_after;
  std::vector<PriceLadder> doubtful_prices_before;
  std::vector<PriceLadder> doubtful_prices_after;
};

/// Collects lines one by one, each under its own category. What is added to the sides is the
/// caller's business: only lines within the scope both captures share, so that a category nobody
/// looked at is not called empty.
class CategoryBook {
 public:
  explicit CategoryBook(Interpreter& interpreter) : interpreter_(interpreter) {}

  void add_before(const Listing& then);
  void add_after(const Listing& now);
  /// The earlier capture may have had the sizes `now` shows: it did not state them, or refused a
  /// row of the line.
  void doubt_before(const Listing& now);
  /// Likewise for the later capture.
  void doubt_after(const Listing& then);
  /// The earlier capture may have had the prices `now` shows; likewise for the later one.
  void doubt_prices_before(const Listing& now);
  void doubt_prices_after(const Listing& then);
  void add_carried(const Listing& now, const std::optional<LineIndexPrices>& prices);
  void add_new(const Listing& now);
  void add_dropped(const Listing& then);

  /// `all` first, then by slug; categories without any line are left out, `all` never is. A
  /// category that prices in several currencies has the index of the one with most lines.
  std::vector<CategoryFigures> figures() const;

 private:
  struct Side {
    std::uint32_t lines = 0;
    ReachTally reach;
    ReachTally doubtful;
    LadderTally prices;
    LadderTally doubtful_prices;

    void merge(const Side& other);
    CategorySide summary() const;
  };
  struct Entry {
    Side before;
    Side after;
    std::uint32_t carried = 0;
    std::uint32_t added = 0;
    std::uint32_t dropped = 0;
    std::map<Currency, std::vector<PricePair>> index;

    void merge(const Entry& other);
    bool empty() const { return before.lines + after.lines + carried + added + dropped == 0; }
    CategoryFigures figures(std::string_view slug) const;
  };

  Entry& entry(const Listing& listing) { return entries_[interpreter_.category(listing.card)]; }
  void add(Side& side, const Listing& listing);

  Interpreter& interpreter_;
  std::map<std::string_view, Entry> entries_;
};

}  // namespace rangebook
