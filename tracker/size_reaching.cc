// One size across shops: who offers it, in how many lines, since when.
#include <algorithm>
#include <set>
#include <tuple>

#include "tracker/category_book.h"
#include "tracker/size_parser.h"
#include "tracker/size_reach.h"
#include "tracker/size_report.h"
#include "tracker/whole_line_row.h"
#include "tracker/wilson.h"

namespace rangebook {
namespace {

/// Lines of one fit range.
struct FitCount {
  std::uint32_t lines = 0;
  std::uint32_t offering = 0;
  std::uint32_t in_stock = 0;
  std::uint32_t stock_unknown = 0;
};

/// What a capture has of one size.
struct SizeCount {
  std::map<FitRange, FitCount> fits;
  std::set<SizeSystem> systems;  // all that were seen
  std::uint32_t unsized = 0;
  std::uint32_t hidden = 0;  // of the unsized: in categories that come in sizes
  bool partial = false;
};

bool includes(const Size& slot, const Size& wanted) {
  return slot.system == wanted.system && slot.low <= wanted.low && slot.high >= wanted.high;
}

/// The best stock among variants of the line in this fit that include the size.
std::optional<Stock> stock_of(const LineOffers& offers, const SizeRun& run, FitRange fit,
                              const Size& wanted) {
  std::optional<Stock> best;
  for (const Offer& offer : offers.offers) {
    const auto& slot = run.slot_of[offer.size];
    if (!slot || run.slots[*slot].fit != fit || !includes(run.slots[*slot], wanted)) continue;
    const bool better = !best || offer.stock == Stock::in_stock ||
                        (*best == Stock::sold_out && offer.stock == Stock::unknown);
    if (better) best = offer.stock;
  }
  return best;
}

void count_line(SizeCount& count, const LineOffers& offers, const SizeRun& run,
                const Size& wanted) {
  if (!run.stated) {
    ++count.unsized;
    return;
  }
  for (const SizeGroup& group : run.groups) {
    count.systems.insert(group.system);
    if (group.system != wanted.system) continue;
    FitCount& fit = count.fits[group.fit];
    ++fit.lines;
    const auto stock = stock_of(offers, run, group.fit, wanted);
    if (!stock) continue;
    ++fit.offering;
    if (*stock == Stock::in_stock) ++fit.in_stock;
    if (*stock == Stock::unknown) ++fit.stock_unknown;
  }
}

SizeCount count_size(const Snapshot& snapshot, const Size& wanted, std::string_view category) {
  SizeCount count;
  Interpreter interpreter(snapshot.shop.sizes);
  for (const LineState& line : snapshot.lines) {
    const std::string_view own = interpreter.category(line.listing.card);
    if (category != kWholeShop && own != category) continue;
    const auto cleaned = without_whole_line_row(line.listing.offers);
    const LineOffers& offers = cleaned ? *cleaned : line.listing.offers;
    const SizeRun& run = interpreter.size_run(offers.sizes);
    count_line(count, offers, run, wanted);
    if (!run.stated && (category != kWholeShop || comes_in_sizes(own))) ++count.hidden;
  }
  count.partial =
      !snapshot.refused.empty() || count.unsized > 0 || !looks_at(snapshot.capture.scope, category);
  return count;
}

Reaching verdict_of(const SizeCount& count, const FitCount& fit, SizeSystem system) {
  if (fit.offering > 0) return Reaching::reaches;
  if (count.systems.contains(system)) return Reaching::not_found;
  return count.systems.empty() ? Reaching::not_seen : Reaching::other_system;
}

}  // namespace

std::optional<Size> size_in(std::string_view label, SizeSystem system) {
  const auto sizes = interpret_sizes(std::vector<std::string>{std::string(label)}, system);
  if (sizes.empty() || !sizes.front().ranked()) return std::nullopt;
  return sizes.front();
}

ReachingSearch::ReachingSearch(const Snapshot& snapshot, const Size& size,
                               std::string_view category)
    : size_(size), category_(category) {
  SizeCount count = count_size(snapshot, size, category);
  count.fits[size.fit];  // the fit that was asked for is answered even where it has no line
  for (const auto& [fit, lines] : count.fits) {
    if (fit != size.fit && lines.offering == 0) continue;
    ReachingShop row;
    row.shop = snapshot.shop;
    row.capture = snapshot.capture;
    row.reaching = verdict_of(count, lines, size.system);
    row.fit = fit;
    row.lines = lines.lines;
    row.step = {size, lines.offering, lines.in_stock, lines.stock_unknown, {}, {}};
    row.step.size.fit = fit;
    row.unsized = count.unsized;
    row.partial = count.partial;
    if (row.partial && row.lines > 0) {
      row.step.offering_interval = wilson_interval(lines.offering, lines.lines);
      row.step.in_stock_interval = wilson_interval(lines.in_stock, lines.lines);
    }
    if (row.reaching == Reaching::other_system) {
      row.systems.assign(count.systems.begin(), count.systems.end());
    }
    rows_.push_back(std::move(row));
    searches_.emplace_back(snapshot.capture);
  }
}

bool ReachingSearch::wants_more() const {
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    if (rows_[i].step.offering > 0 && searches_[i].open()) return true;
  }
  return false;
}

void ReachingSearch::add(const Snapshot& earlier) {
  const SizeCount count = count_size(earlier, size_, category_);
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const auto fit = count.fits.find(rows_[i].fit);
    const bool offered = fit != count.fits.end() && fit->second.offering > 0;
    searches_[i].see(earlier.capture, offered         ? SizeSeen::offered
                                      : count.partial ? SizeSeen::cannot_tell
                                                      : SizeSeen::absent);
  }
}

std::vector<ReachingShop> ReachingSearch::take() {
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    if (rows_[i].step.offering > 0) rows_[i].since = searches_[i].since();
  }
  return std::move(rows_);
}

void sort_reaching(std::vector<ReachingShop>& shops) {
  std::sort(shops.begin(), shops.end(), [](const ReachingShop& a, const ReachingShop& b) {
    if (a.reaching != b.reaching) return a.reaching < b.reaching;
    // Shares compared by cross-multiplying: no rounding decides the order.
    const auto left = std::uint64_t{a.step.offering} * b.lines;
    const auto right = std::uint64_t{b.step.offering} * a.lines;
    if (left != right) return left > right;
    return std::tie(a.shop.slug, a.fit) < std::tie(b.shop.slug, b.fit);
  });
}

}  // namespace rangebook
