// Size by size of one capture, and back through those before it.
#include "tracker/size_report.h"

#include <algorithm>
#include <variant>

#include "tracker/category_book.h"
#include "tracker/differ.h"
#include "tracker/line_pair.h"
#include "tracker/size_parser.h"
#include "tracker/size_reach.h"
#include "tracker/whole_line_row.h"

namespace rangebook {
namespace {

struct Tally {
  CategorySizes counts;
  ReachTally reach;

  void add(const SizeRun& run, const LineOffers& offers) {
    ++counts.lines;
    if (!run.stated) {
      ++counts.unsized;
      return;
    }
    ++(run.slots.empty() ? counts.unranked : counts.ranked);
    reach.add(run, offers);
  }
  void merge(const Tally& other) {
    counts.lines += other.counts.lines;
    counts.ranked += other.counts.ranked;
    counts.unranked += other.counts.unranked;
    counts.unsized += other.counts.unsized;
    reach.merge(other.reach);
  }
};

SizeTable table_of(const SizeReach& reach) {
  SizeTable table{reach.system, reach.fit, reach.lines, {}};
  for (const ReachStep& step : reach.steps) table.sizes.push_back({step, std::nullopt, false});
  return table;
}

/// `hidden`: lines that have sizes but do not state them.
CategorySizes finished(const Tally& tally, std::string_view category, const Snapshot& snapshot,
                       std::uint32_t hidden) {
  CategorySizes sizes = tally.counts;
  sizes.category = category;
  sizes.partial =
      !snapshot.refused.empty() || hidden > 0 || !looks_at(snapshot.capture.scope, category);
  auto reach = tally.reach.reach();
  if (sizes.partial) add_intervals(reach);
  for (const SizeReach& each : reach) sizes.tables.push_back(table_of(each));
  return sizes;
}

const CategorySizes* find_category(const std::vector<CategorySizes>& categories,
                                   std::string_view slug) {
  const auto found =
      std::find_if(categories.begin(), categories.end(),
                   [slug](const CategorySizes& each) { return each.category == slug; });
  return found == categories.end() ? nullptr : &*found;
}

bool offers_size(const CategorySizes& category, const SizePosition& size) {
  return std::any_of(category.tables.begin(), category.tables.end(), [&](const SizeTable& table) {
    return std::any_of(table.sizes.begin(), table.sizes.end(), [&](const SizeLine& line) {
      return line.step.offering > 0 && position_of(line.step.size) == size;
    });
  });
}

std::optional<StatedSizes> latest_stated(const std::vector<StatedSizes>& stated, Day on) {
  if (stated.empty()) return std::nullopt;
  const StatedSizes* latest = &stated.front();
  for (const StatedSizes& each : stated) {
    if (each.on <= on) latest = &each;
  }
  return *latest;
}

std::vector<Size> sizes_of(const std::optional<StatedSizes>& stated, SizeSystem system) {
  if (!stated) return {};
  const auto labels = expand_sizes(stated->words, system);
  const auto* list = std::get_if<std::vector<std::string>>(&labels);
  return list == nullptr ? std::vector<Size>{} : interpret_sizes(*list, system);
}

}  // namespace

bool looks_at(const Scope& scope, std::string_view category) {
  return category == kWholeShop ? scope.kind == Scope::Kind::all : scope_covers(scope, category);
}

SinceSearch::SinceSearch(const CaptureInfo& now) { since_.first = sighting_of(now); }

void SinceSearch::see(const CaptureInfo& capture, SizeSeen seen) {
  if (!open_) return;
  switch (seen) {
    case SizeSeen::offered:
      since_.first = sighting_of(capture);
      ++since_.captures;
      since_.cannot_tell += unsure_;
      unsure_ = 0;
      break;
    case SizeSeen::absent:
      open_ = false;
      break;
    case SizeSeen::cannot_tell:
      ++unsure_;
      break;
  }
}

CaptureSizes::CaptureSizes(const Snapshot& snapshot)
    : capture_(snapshot.capture), refused_(!snapshot.refused.empty()) {
  Interpreter interpreter(snapshot.shop.sizes);
  std::map<std::string_view, Tally> tallies;
  for (const LineState& line : snapshot.lines) {
    const auto cleaned = without_whole_line_row(line.listing.offers);
    const LineOffers& offers = cleaned ? *cleaned : line.listing.offers;
    tallies[interpreter.category(line.listing.card)].add(interpreter.size_run(offers.sizes),
                                                         offers);
  }
  Tally whole;
  for (const auto& [slug, tally] : tallies) {
    whole.merge(tally);
    if (comes_in_sizes(slug)) hidden_ += tally.counts.unsized;
  }
  categories_.push_back(finished(whole, kWholeShop, snapshot, hidden_));
  for (const auto& [slug, tally] : tallies) {
    categories_.push_back(finished(tally, slug, snapshot, tally.counts.unsized));
  }
}

SizeSeen CaptureSizes::seen(std::string_view category, const SizePosition& size) const {
  const CategorySizes* sizes = find_category(categories_, category);
  if (sizes != nullptr && offers_size(*sizes, size)) return SizeSeen::offered;
  const std::uint32_t hidden = category == kWholeShop ? hidden_ : sizes ? sizes->unsized : 0;
  return looks_at(capture_.scope, category) && !refused_ && hidden == 0 ? SizeSeen::absent
                                                                        : SizeSeen::cannot_tell;
}

SizeReporter::SizeReporter(const Snapshot& snapshot, const std::vector<StatedSizes>& stated,
                           std::string_view category) {
  const CaptureSizes sizes(snapshot);
  report_.shop = snapshot.shop;
  report_.capture = snapshot.capture;
  report_.rows_refused = static_cast<std::uint32_t>(snapshot.refused.size());
  report_.stated = latest_stated(stated, snapshot.capture.on);
  const auto stated_range = sizes_of(report_.stated, snapshot.shop.sizes);
  for (const CategorySizes& each : sizes.categories()) {
    if (!category.empty() && each.category != category) continue;
    CategorySizes& own = report_.categories.emplace_back(each);
    for (const SizeTable& table : own.tables) {
      for (const SizeLine& line : table.sizes) {
        searches_.emplace(Key{own.category, position_of(line.step.size)},
                          SinceSearch(snapshot.capture));
      }
    }
    mark_stated(own, stated_range);
  }
}

// Sizes that are stated and found are marked, the others get a line of their own with no line that
// offers them; only in systems and fits the category has, since nothing is converted.
void SizeReporter::mark_stated(CategorySizes& category, const std::vector<Size>& sizes) const {
  for (SizeTable& table : category.tables) {
    for (const Size& size : sizes) {
      if (size.system != table.system || size.fit != table.fit || !size.ranked()) continue;
      const auto at =
          std::find_if(table.sizes.begin(), table.sizes.end(), [&size](const SizeLine& line) {
            return position_of(line.step.size) == position_of(size);
          });
      if (at != table.sizes.end()) {
        at->stated = true;
        continue;
      }
      std::vector<SizeReach> missing{{table.system, table.fit, table.lines, {ReachStep{size}}}};
      if (category.partial) add_intervals(missing);
      table.sizes.push_back({missing.front().steps.front(), std::nullopt, true});
    }
    std::sort(table.sizes.begin(), table.sizes.end(), [](const SizeLine& a, const SizeLine& b) {
      return size_less(a.step.size, b.step.size);
    });
  }
}

bool SizeReporter::wants_more() const {
  return std::any_of(searches_.begin(), searches_.end(),
                     [](const auto& search) { return search.second.open(); });
}

void SizeReporter::add(const Snapshot& earlier) {
  const CaptureSizes sizes(earlier);
  for (auto& [key, search] : searches_) {
    search.see(earlier.capture, sizes.seen(key.first, key.second));
  }
}

SizeReport SizeReporter::take() {
  for (CategorySizes& category : report_.categories) {
    for (SizeTable& table : category.tables) {
      for (SizeLine& line : table.sizes) {
        const auto found = searches_.find(Key{category.category, position_of(line.step.size)});
        if (found != searches_.end()) line.since = found->second.since();
      }
    }
  }
  return std::move(report_);
}

}  // namespace rangebook
