// Comparing the prices of one line.
#include "tracker/price_diff.h"

#include <algorithm>
#include <compare>
#include <utility>
#include <vector>

#include "tracker/line_prices.h"
#include "tracker/variant_match.h"
#include "tracker/variant_words.h"

namespace rangebook {
namespace {

using Price = std::optional<MinorUnits>;

/// What happened to the price of a variant. Variants with equal events are one change.
struct PriceEvent {
  ChangeKind kind = ChangeKind::price_up;
  MinorUnits before = 0;
  MinorUnits after = 0;
  Price full_before;
  Price full_after;

  auto operator<=>(const PriceEvent&) const = default;
};

std::optional<PriceEvent> full_price_event(const Offer& before, const Offer& after) {
  const Price then = undiscounted(before);
  const Price now = undiscounted(after);
  if (!then || !now || *then == *now) return std::nullopt;
  return PriceEvent{
      *then < *now ? ChangeKind::price_up : ChangeKind::price_down, *then, *now, {}, {}};
}

std::optional<PriceEvent> markdown_event(const Offer& before, const Offer& after) {
  if (!before.price || !after.price) return std::nullopt;
  const bool then = is_marked_down(before);
  const bool now = is_marked_down(after);
  const Price full_then = then ? before.full_price : std::nullopt;
  const Price full_now = now ? after.full_price : std::nullopt;
  const auto event = [&](ChangeKind kind) {
    return PriceEvent{kind, *before.price, *after.price, full_then, full_now};
  };
  if (!then && now) return event(ChangeKind::marked_down);
  if (then && !now) return event(ChangeKind::markdown_ended);
  if (then && now && *before.price != *after.price) return event(ChangeKind::markdown_changed);
  return std::nullopt;
}

class PriceDiff {
 public:
  PriceDiff(const LinePair& pair, Currency currency, PairChanges& changes)
      : pair_(pair), currency_(currency), changes_(changes) {}

  void add(const PriceEvent& event, const VariantWords& words);
  /// Events of `variants`, grouped; `event_of(before, after)` says what happened to one.
  template <typename EventOf>
  void compare(const std::vector<CommonVariant>& variants, EventOf event_of);
  void compare_whole_lines(SilenceLog& silences);

 private:
  const LinePair& pair_;
  Currency currency_;
  PairChanges& changes_;
};

void PriceDiff::add(const PriceEvent& event, const VariantWords& words) {
  const auto money = [this](const Price& price) {
    return price ? std::optional(Money{*price, currency_}) : std::nullopt;
  };
  changes_.add(event.kind,
               PriceFact{{event.before, currency_},
                         words.colours_before,
                         words.sizes_before,
                         money(event.full_before)},
               PriceFact{{event.after, currency_},
                         words.colours_after,
                         words.sizes_after,
                         money(event.full_after)});
}

template <typename EventOf>
void PriceDiff::compare(const std::vector<CommonVariant>& variants, EventOf event_of) {
  std::vector<std::pair<PriceEvent, std::size_t>> events;
  for (std::size_t i = 0; i < variants.size(); ++i) {
    if (const auto event = event_of(*variants[i].before, *variants[i].after)) {
      events.emplace_back(*event, i);
    }
  }
  if (events.empty()) return;
  std::sort(events.begin(), events.end());
  const VariantNamer namer(variants, pair_);
  for (auto first = events.begin(); first != events.end();) {
    std::vector<std::size_t> part;
    auto last = first;
    for (; last != events.end() && last->first == first->first; ++last)
      part.push_back(last->second);
    for (const VariantWords& words : namer.describe(part)) add(first->first, words);
    first = last;
  }
}

/// The one price of all variants of a side; nothing if they differ.
std::optional<Offer> uniform_offer(const LineOffers& side) {
  if (side.offers.empty()) return std::nullopt;
  const Offer& first = side.offers.front();
  const bool uniform =
      std::all_of(side.offers.begin(), side.offers.end(), [&first](const Offer& offer) {
        return offer.price == first.price && offer.full_price == first.full_price;
      });
  return uniform ? std::optional(first) : std::nullopt;
}

std::optional<Offer> lowest_offer(const LineOffers& side) {
  Offer lowest;
  lowest.price = lowest_undiscounted(side);
  return lowest;
}

/// Rows about the whole line only: their price is often that of the cheapest variant.
bool names_no_variant(const LineOffers& side) {
  return side.colours.size() == 1 && side.colours.front().empty() && side.sizes.size() == 1 &&
         side.sizes.front().empty();
}

/// The selling price is the same, and one side states a full price above it where the other's
/// capture never states one: it may have left it out.
bool markdown_unclear(const Offer& before, const Offer& after, const LinePair& pair) {
  if (before.price != after.price || is_marked_down(before) == is_marked_down(after)) return false;
  CaptureDetail& silent = is_marked_down(before) ? *pair.detail_after : *pair.detail_before;
  return !silent.states_markdowns();
}

// Without a common variant only what holds for all variants may be said of one: see the header.
void PriceDiff::compare_whole_lines(SilenceLog& silences) {
  if (pair_.refused_then || pair_.refused_now) return;
  auto before = uniform_offer(pair_.then().offers);
  auto after = uniform_offer(pair_.now().offers);
  const bool uniform = before && after;
  if (uniform && markdown_unclear(*before, *after, pair_)) {
    silences.add(Silence::markdowns, pair_.now().card);
    return;
  }
  if (!uniform) {
    if (names_no_variant(pair_.then().offers) || names_no_variant(pair_.now().offers)) {
      silences.add(Silence::line_price, pair_.now().card);
      return;
    }
    before = lowest_offer(pair_.then().offers);
    after = lowest_offer(pair_.now().offers);
  }
  for (const auto& event : {full_price_event(*before, *after), markdown_event(*before, *after)}) {
    if (event) add(*event, {});
  }
}

/// Those of `variants` for which `priced` holds on both sides.
template <typename Priced>
std::vector<CommonVariant> priced_on_both(const std::vector<CommonVariant>& variants,
                                          Priced priced) {
  std::vector<CommonVariant> both;
  both.reserve(variants.size());
  for (const CommonVariant& variant : variants) {
    if (priced(*variant.before) && priced(*variant.after)) both.push_back(variant);
  }
  return both;
}

/// False for most lines whose offers differ: their stock changed.
bool price_moved(const CommonVariant& variant) {
  return variant.before->price != variant.after->price ||
         variant.before->full_price != variant.after->full_price;
}

std::optional<PricePair> lowest_of(const std::vector<CommonVariant>& variants) {
  if (variants.empty()) return std::nullopt;
  PricePair lowest{*undiscounted(*variants.front().before), *undiscounted(*variants.front().after)};
  for (const CommonVariant& variant : variants) {
    lowest.before = std::min(lowest.before, *undiscounted(*variant.before));
    lowest.after = std::min(lowest.after, *undiscounted(*variant.after));
  }
  return lowest;
}

bool states_price(const LineOffers& side) {
  return std::any_of(side.offers.begin(), side.offers.end(),
                     [](const Offer& offer) { return undiscounted(offer).has_value(); });
}

/// The currency both sides price in; otherwise the silence is logged.
std::optional<Currency> common_currency(const LinePair& pair, SilenceLog& silences) {
  const bool then = states_price(pair.then().offers);
  const bool now = states_price(pair.now().offers);
  if (then != now) silences.add(Silence::prices, pair.now().card);
  if (!then || !now) return std::nullopt;
  const auto currency = pair.then().offers.currency;
  if (currency && currency == pair.now().offers.currency) return currency;
  silences.add(Silence::currency, pair.now().card);
  return std::nullopt;
}

}  // namespace

std::optional<LineIndexPrices> diff_prices(const LinePair& pair, Interpreter& interpreter,
                                           PairChanges& changes, SilenceLog& silences) {
  const auto currency = common_currency(pair, silences);
  if (!currency) return std::nullopt;
  PriceDiff diff(pair, *currency, changes);
  auto common = common_variants(pair.then().offers, *pair.sizes_before, pair.now().offers,
                                *pair.sizes_after, interpreter);
  if (common.empty()) {
    diff.compare_whole_lines(silences);
    return std::nullopt;
  }
  const auto unclear = std::erase_if(common, [&pair](const CommonVariant& variant) {
    return markdown_unclear(*variant.before, *variant.after, pair);
  });
  if (unclear > 0) silences.add(Silence::markdowns, pair.now().card);
  const auto full =
      priced_on_both(common, [](const Offer& o) { return undiscounted(o).has_value(); });
  if (std::any_of(common.begin(), common.end(), price_moved)) {
    diff.compare(full, full_price_event);
    diff.compare(priced_on_both(common, [](const Offer& o) { return o.price.has_value(); }),
                 markdown_event);
  }
  const auto lowest = lowest_of(full);
  return lowest ? std::optional(LineIndexPrices{*currency, *lowest}) : std::nullopt;
}

std::optional<LineIndexPrices> unchanged_prices(const LineOffers& offers) {
  const auto lowest = lowest_undiscounted(offers);
  if (!lowest || !offers.currency) return std::nullopt;
  return LineIndexPrices{*offers.currency, {*lowest, *lowest}};
}

}  // namespace rangebook
