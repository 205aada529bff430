// Was a crossed-out price what the shop asked before? Our own captures of the days before a
// markdown tell, where there are any. Never more than they prove: a lower price that was captured
// is a fact, while its absence between two captures is not.
#pragma once

#include <optional>
#include <vector>

#include "schema/change.h"
#include "schema/link.h"
#include "schema/snapshot.h"

namespace rangebook {

/// Takes the captures before `now` one by one, newest first, and says how far back it still needs
/// them. A pure function of these values.
///
/// A variant counts as marked down since the first capture of the unbroken run that shows it so;
/// captures more than kWasPriceDays apart do not make a run, since nobody knows what the price was
/// in between. The markdown itself began on that day or before it, and after the last capture that
/// does not show it, so a price captured within kWasPriceDays before that day lies within
/// kWasPriceDays before the markdown, however early in between it began.
class WasPriceChecker {
 public:
  /// `now` must outlive this.
  explicit WasPriceChecker(const Snapshot& now);

  /// The first day whose captures can matter; nothing where no line is marked down.
  std::optional<Day> needs_from() const;

  /// A capture of an earlier day than `now`. `links` go from its lines to those of `now`; those by
  /// likeness are not used, nor are prices in another currency.
  void add(const Snapshot& earlier, const LinkSet& links);

  WasPriceCheck result() const;

 private:
  /// The lowest price in the days before the markdown, as far as seen.
  struct Lowest {
    MinorUnits price = 0;
    bool marked_down = false;
    Sighting at;

    auto operator<=>(const Lowest&) const = default;
  };
  struct Variant {
    std::size_t line = 0;  // of `now`
    const Offer* offer = nullptr;
    Day since{};
    bool run_open = true;
    std::optional<Lowest> lowest;

    bool lower() const { return lowest && lowest->price < *offer->full_price; }
  };
  /// Variants `begin` up to, not including, `end` are those of one line, in the order of offers.
  struct Line {
    std::size_t begin = 0;
    std::size_t end = 0;
  };

  void see(Variant& variant, const Offer& then, const CaptureInfo& capture, const Origin& origin);
  void add_findings(std::size_t line, const Line& variants,
                    std::vector<WasPriceFinding>& findings) const;

  const Snapshot& now_;
  std::vector<Variant> variants_;
  std::vector<Line> lines_;  // by line of `now`; empty ranges where nothing is marked down
};

}  // namespace rangebook
