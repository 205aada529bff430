// Sightings one after the other, each against the last.
#include "tracker/line_history.h"

#include <algorithm>
#include <utility>

#include "schema/names.h"
#include "tracker/coverage.h"
#include "tracker/differ.h"
#include "tracker/interpreter.h"
#include "tracker/line_pair.h"
#include "tracker/size_diff.h"

namespace rangebook {
namespace {

constexpr NameTable<Presence, 4> kPresences{{
    {Presence::seen, "seen"},
    {Presence::absent, "absent"},
    {Presence::not_looked, "not-looked"},
    {Presence::refused, "refused"},
}};

void widen(std::optional<PriceSpan>& span, const std::optional<MinorUnits>& amount,
           Currency currency) {
  if (!amount) return;
  const Money money{*amount, currency};
  if (!span) span = PriceSpan{money, money};
  span->low = std::min(span->low, money);
  span->high = std::max(span->high, money);
}

class Telling {
 public:
  explicit Telling(const Shop& shop) : shop_(shop), interpreter_(shop.sizes) {}

  HistoryEntry entry(HistoryCapture& now) {
    HistoryEntry entry;
    entry.capture = now.capture;
    if (!now.line) {
      entry.presence = presence(now);
      return entry;
    }
    entry.line = seen_line(now);
    entry.link = now.link;
    if (last_) entry.changes = changes(now);
    last_ = std::move(now);
    return entry;
  }

 private:
  Presence presence(const HistoryCapture& now) {
    const LineCard& card = last_->line->listing.card;
    if (RefusedIndex(now.refused).may_be(card)) return Presence::refused;
    return scope_covers(now.capture.scope, interpreter_.category(card)) ? Presence::absent
                                                                        : Presence::not_looked;
  }

  SeenLine seen_line(const HistoryCapture& now) {
    const Listing& listing = now.line->listing;
    SeenLine line;
    line.card = listing.card;
    line.category = interpreter_.category(listing.card);
    line.seen = sighting_of(now.capture, listing.origin);
    for (const auto& colour : listing.offers.colours) {
      if (!colour.empty()) line.colours.push_back(colour);
    }
    const SizeRun& run = interpreter_.size_run(listing.offers.sizes);
    for (const SizeGroup& group : run.groups) line.sizes.push_back(size_fact(run, group));
    line.unranked = run.unranked;
    add_offers(line, listing.offers);
    return line;
  }

  static void add_offers(SeenLine& line, const LineOffers& offers) {
    line.variants = static_cast<std::uint32_t>(offers.offers.size());
    for (const Offer& offer : offers.offers) {
      if (is_marked_down(offer)) ++line.marked_down;
      if (offer.stock != Stock::unknown) ++line.stock.offered;
      if (offer.stock == Stock::in_stock) ++line.stock.in_stock;
      if (!offers.currency) continue;
      if (offer.price) widen(line.price, *offer.price, *offers.currency);
      widen(line.full_price, undiscounted(offer), *offers.currency);
    }
  }

  /// Both captures with this line alone.
  std::vector<Change> changes(const HistoryCapture& now) const {
    const Snapshot from{shop_, last_->capture, {*last_->line}, last_->refused};
    const Snapshot to{shop_, now.capture, {*now.line}, now.refused};
    const Link link{0, 0, {}, LinkAuthority::code, 1.0, now.link};
    auto all = diff_snapshots(from, to, {{link}, {}, {}}, {}).changes;
    std::erase_if(all, [](const Change& change) { return !change.line; });
    return all;
  }

  const Shop& shop_;
  Interpreter interpreter_;
  std::optional<HistoryCapture> last_;
};

}  // namespace

std::string_view to_string(Presence presence) { return name_of(kPresences, presence); }

std::vector<HistoryEntry> tell_history(const Shop& shop, std::vector<HistoryCapture> captures) {
  std::vector<HistoryEntry> entries;
  Telling telling(shop);
  for (HistoryCapture& capture : captures) entries.push_back(telling.entry(capture));
  return entries;
}

}  // namespace rangebook
