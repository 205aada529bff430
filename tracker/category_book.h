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

/// What one side of a category may have besides what its capture shows.
struct CategoryDoubts {
  std::vector<SizeReach> sizes;  ///< of lines that are silent there and known from the other side
  std::vector<PriceLadder> prices;  ///< likewise
  bool any_size = false;   ///< a line only this side has does not state its sizes: any may be there
  bool any_price = false;  ///< likewise its price
};
struct CategoryFigures {
  CategorySummary summary;
  CategoryDoubts before;
  CategoryDoubts after;
};

/// What the captures as a whole leave open.
struct CaptureLimits {
  bool whole_range = true;  ///< both looked at everything
  bool rows_refused_before = false;
  bool rows_refused_after = false;
};

/// Collects lines one by one, each under its own category. What is added to the sides is the
/// caller's business: only lines within the scope both captures share, so that a category nobody
/// looked at is not called empty. Size runs must outlive the book.
class CategoryBook {
 public:
  /// `category` is the slug to book under throughout: the caller knows where a line belongs that
  /// the two captures file unlike each other. Slugs are those of the category tree.
  void add_before(std::string_view category, const Listing& then, const SizeRun& sizes);
  void add_after(std::string_view category, const Listing& now, const SizeRun& sizes);
  /// A line that stands in no figure: the other capture did not look for it.
  void add_outside_before(std::string_view category) { ++entries_[category].before.outside; }
  void add_outside_after(std::string_view category) { ++entries_[category].after.outside; }
  /// The earlier capture may have had the sizes `now` shows: it did not state them, or refused a
  /// row of the line.
  void doubt_before(std::string_view category, const Listing& now, const SizeRun& sizes);
  /// Likewise for the later capture.
  void doubt_after(std::string_view category, const Listing& then, const SizeRun& sizes);
  /// The earlier capture may have had the prices `now` shows; likewise for the later one.
  void doubt_prices_before(std::string_view category, const Listing& now);
  void doubt_prices_after(std::string_view category, const Listing& then);
  /// A line of the earlier capture alone: what it does not state may be anything.
  void alone_before(std::string_view category, const Listing& then, const SizeRun& sizes);
  void alone_after(std::string_view category, const Listing& now, const SizeRun& sizes);

  void add_carried(std::string_view then, std::string_view now,
                   const std::optional<LineIndexPrices>& prices);
  void add_new(std::string_view category) { ++entries_[category].counts.added; }
  void add_returned(std::string_view category) { ++entries_[category].counts.returned; }
  void add_unseen_then(std::string_view category) { ++entries_[category].counts.unseen_then; }
  void add_dropped(std::string_view category) { ++entries_[category].counts.dropped; }
  void add_not_covered(std::string_view category) { ++entries_[category].counts.not_covered; }

  /// `all` first, then by slug; categories without any line are left out, `all` never is. A
  /// category that prices in several currencies has the index of the one with most lines.
  std::vector<CategoryFigures> figures(const CaptureLimits& limits) const;

 private:
  struct Side {
    std::uint32_t lines = 0;
    std::uint32_t outside = 0;
    std::uint32_t unpriced = 0;
    std::uint32_t unsized = 0;
    std::uint32_t hidden = 0;  // unsized lines of categories that come in sizes
    ReachTally reach;
    LadderTally prices;
    ReachTally doubtful;
    LadderTally doubtful_prices;
    bool any_size = false;
    bool any_price = false;

    void merge(const Side& other, bool sized);
    CategorySide summary(bool partial) const;
    CategoryDoubts doubts() const;
  };
  struct Entry {
    Side before;
    Side after;
    CategorySummary counts;  // the counts alone
    std::map<Currency, std::vector<PricePair>> index;

    void merge(std::string_view slug, const Entry& other);
    bool empty() const;
    CategoryFigures figures(std::string_view slug, const CaptureLimits& limits) const;
  };

  static void add(Side& side, const Listing& listing, const SizeRun& sizes);
  static void alone(Side& side, const Listing& listing, const SizeRun& sizes);

  std::map<std::string_view, Entry> entries_;
};

}  // namespace rangebook
