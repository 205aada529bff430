// Checking stated "was" prices against captured ones.
#include "tracker/was_price.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "tracker/interpreter.h"
#include "tracker/line_pair.h"
#include "tracker/variant_match.h"
#include "tracker/variant_words.h"

namespace rangebook {
namespace {

constexpr date::days kDays{kWasPriceDays};

bool is_exact(const Link& link) {
  return std::find(link.evidence.begin(), link.evidence.end(), LinkEvidence::likeness) ==
         link.evidence.end();
}

}  // namespace

WasPriceChecker::WasPriceChecker(const Snapshot& now) : now_(now) {
  lines_.reserve(now.lines.size());
  for (std::size_t line = 0; line < now.lines.size(); ++line) {
    const std::size_t begin = variants_.size();
    for (const Offer& offer : now.lines[line].listing.offers.offers) {
      if (is_marked_down(offer)) {
        variants_.push_back({line, &offer, now.capture.on, true, std::nullopt});
      }
    }
    lines_.push_back({begin, variants_.size()});
  }
}

std::optional<Day> WasPriceChecker::needs_from() const {
  const auto earliest =
      std::min_element(variants_.begin(), variants_.end(),
                       [](const Variant& a, const Variant& b) { return a.since < b.since; });
  if (earliest == variants_.end()) return std::nullopt;
  return earliest->since - kDays;
}

void WasPriceChecker::see(Variant& variant, const Offer& then, const CaptureInfo& capture,
                          const Origin& origin) {
  if (!then.price || capture.on < variant.since - kDays) return;
  if (variant.run_open && is_marked_down(then)) {
    variant.since = std::min(variant.since, capture.on);
    return;
  }
  variant.run_open = false;
  if (capture.on >= variant.since) return;
  Lowest seen{*then.price, is_marked_down(then), sighting_of(capture, origin)};
  if (!variant.lowest || seen.price < variant.lowest->price) variant.lowest = std::move(seen);
}

void WasPriceChecker::add(const Snapshot& earlier, const LinkSet& links) {
  Interpreter interpreter(now_.shop.sizes);
  for (const Link& link : links.links) {
    const Line& own = lines_[link.to];
    if (own.begin == own.end || !is_exact(link)) continue;
    const Listing& then = earlier.lines[link.from].listing;
    const Listing& now = now_.lines[link.to].listing;
    if (then.offers.currency != now.offers.currency) continue;
    const auto sizes = interpreter.size_runs(then.offers.sizes, now.offers.sizes);
    for (const CommonVariant& common :
         common_variants(then.offers, *sizes.before, now.offers, *sizes.after, interpreter)) {
      const auto first = variants_.begin() + static_cast<std::ptrdiff_t>(own.begin);
      const auto last = variants_.begin() + static_cast<std::ptrdiff_t>(own.end);
      const auto variant = std::find_if(
          first, last, [&common](const Variant& each) { return each.offer == common.after; });
      if (variant != last) see(*variant, *common.before, earlier.capture, then.origin);
    }
  }
}

// Variants of a line whose prices and evidence are the same are one finding.
void WasPriceChecker::add_findings(std::size_t line, const Line& variants,
                                   std::vector<WasPriceFinding>& findings) const {
  const LineState& state = now_.lines[line];
  const LineOffers& offers = state.listing.offers;
  std::vector<CommonVariant> all;
  for (const Offer& offer : offers.offers) all.push_back({&offer, &offer});
  using Claim = std::tuple<MinorUnits, MinorUnits, Day, Lowest>;
  std::map<Claim, std::vector<std::size_t>> groups;
  for (std::size_t i = variants.begin; i < variants.end; ++i) {
    const Variant& variant = variants_[i];
    if (!variant.lower()) continue;
    groups[{*variant.offer->price, *variant.offer->full_price, variant.since, *variant.lowest}]
        .push_back(static_cast<std::size_t>(variant.offer - offers.offers.data()));
  }
  if (groups.empty()) return;
  Interpreter interpreter(now_.shop.sizes);
  const LineRef ref = line_ref(state.id, state, interpreter.category(state.listing.card));
  LinePair pair;
  pair.before = pair.after = &state;
  pair.sizes_before = pair.sizes_after = &interpreter.size_run(offers.sizes);
  const VariantNamer namer(all, pair);
  for (const auto& [claim, part] : groups) {
    const auto& [price, full, since, lowest] = claim;
    for (const VariantWords& words : namer.describe(part)) {
      findings.push_back({ref,
                          PriceFact{{price, *offers.currency},
                                    words.colours_after,
                                    words.sizes_after,
                                    Money{full, *offers.currency}},
                          sighting_of(now_.capture, state.listing.origin), since,
                          Money{lowest.price, *offers.currency}, lowest.at, lowest.marked_down});
    }
  }
}

WasPriceCheck WasPriceChecker::result() const {
  WasPriceCheck check;
  for (std::size_t line = 0; line < lines_.size(); ++line) {
    const Line& own = lines_[line];
    if (own.begin == own.end) continue;
    ++check.marked_down;
    const auto first = variants_.begin() + static_cast<std::ptrdiff_t>(own.begin);
    const auto last = variants_.begin() + static_cast<std::ptrdiff_t>(own.end);
    if (std::any_of(first, last, [](const Variant& each) { return each.lower(); })) {
      ++check.lower;
      add_findings(line, own, check.findings);
    } else if (std::any_of(first, last, [](const Variant& each) { return !each.lowest; })) {
      ++check.not_checked;
    } else {
      ++check.not_lower;
    }
  }
  const auto key = [](const WasPriceFinding& each) {
    return std::tie(each.line.code, each.line.name, each.line.id, each.marked, each.marked_since,
                    each.lowest, each.lowest_at);
  };
  std::sort(check.findings.begin(), check.findings.end(),
            [&key](const WasPriceFinding& a, const WasPriceFinding& b) { return key(a) < key(b); });
  return check;
}

}  // namespace rangebook
