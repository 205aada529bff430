// Comparing the size ranges of one line.
#include "tracker/size_diff.h"

#include <algorithm>
#include <vector>

namespace rangebook {
namespace {

/// A group together with the run that holds its slots.
struct Sizes {
  const SizeRun* run = nullptr;
  const SizeGroup* group = nullptr;

  std::int32_t low() const { return run->slots[group->smallest].low; }
  std::int32_t high() const { return run->slots[group->largest].high; }
  auto begin() const { return run->slots.begin() + static_cast<std::ptrdiff_t>(group->begin); }
  auto end() const { return run->slots.begin() + static_cast<std::ptrdiff_t>(group->end); }
};

/// `b` has a size beyond the smallest or the largest of `a`.
bool reaches_beyond(const Sizes& a, const Sizes& b) {
  return b.low() < a.low() || b.high() > a.high();
}

/// Sizes of `a` with, for each, the highest reach of it and all before it; ordered by low end.
class Cover {
 public:
  explicit Cover(const Sizes& a) : first_(a.begin()), last_(a.end()) {
    for (auto size = first_; size != last_; ++size) {
      highest_.push_back(highest_.empty() ? size->high : std::max(highest_.back(), size->high));
    }
  }

  /// A size of `a` is, or spans a part of, the positions low..high.
  bool meets(const Size& size) const {
    const auto after = std::upper_bound(first_, last_, size.high,
                                        [](std::int32_t at, const Size& s) { return at < s.low; });
    return after != first_ && highest_[static_cast<std::size_t>(after - first_) - 1] >= size.low;
  }

 private:
  std::vector<Size>::const_iterator first_;
  std::vector<Size>::const_iterator last_;
  std::vector<std::int32_t> highest_;
};

/// `b` offers a size strictly inside the range of `a` that `a` does not offer. A dual size (S/M) of
/// `a` counts as offering both.
bool fills_gap_of(const Sizes& a, const Sizes& b) {
  const Cover cover(a);
  return std::any_of(b.begin(), b.end(), [&](const Size& size) {
    return size.low > a.low() && size.high < a.high() && !cover.meets(size);
  });
}

void add_group_changes(const Sizes& before, const Sizes& after, const LinePair& pair,
                       PairChanges& changes) {
  const auto add = [&](ChangeKind kind) {
    changes.add(kind, size_fact(*before.run, *before.group), size_fact(*after.run, *after.group));
  };
  if (!pair.refused_then && reaches_beyond(before, after)) add(ChangeKind::sizes_widened);
  if (!pair.refused_now && reaches_beyond(after, before)) add(ChangeKind::sizes_narrowed);
  if (!pair.refused_then && fills_gap_of(before, after)) add(ChangeKind::size_gap_filled);
  if (!pair.refused_now && fills_gap_of(after, before)) add(ChangeKind::size_gap_opened);
}

/// True when `run` has the fit range of `group`, but in other systems only.
bool other_system(const SizeRun& run, const SizeGroup& group) {
  return run.has_fit(group.fit) && run.group(group.system, group.fit) == nullptr;
}

void add_fit_ranges(const LinePair& pair, PairChanges& changes) {
  const SizeRun& before = *pair.sizes_before;
  const SizeRun& after = *pair.sizes_after;
  for (const SizeGroup& group : after.groups) {
    if (pair.refused_then || before.has_fit(group.fit)) continue;
    changes.add(ChangeKind::fit_range_added, std::nullopt, size_fact(after, group));
  }
  for (const SizeGroup& group : before.groups) {
    if (pair.refused_now || after.has_fit(group.fit)) continue;
    changes.add(ChangeKind::fit_range_dropped, size_fact(before, group), std::nullopt);
  }
}

bool systems_differ(const SizeRun& before, const SizeRun& after) {
  const auto missing_in = [](const SizeRun& run) {
    return [&run](const SizeGroup& group) { return other_system(run, group); };
  };
  return std::any_of(before.groups.begin(), before.groups.end(), missing_in(after)) ||
         std::any_of(after.groups.begin(), after.groups.end(), missing_in(before));
}

void diff_ranked(const LinePair& pair, PairChanges& changes) {
  const SizeRun& before = *pair.sizes_before;
  const SizeRun& after = *pair.sizes_after;
  if (before.groups.empty() || after.groups.empty()) return;
  for (const SizeGroup& group : before.groups) {
    const SizeGroup* same = after.group(group.system, group.fit);
    if (same != nullptr) add_group_changes({&before, &group}, {&after, same}, pair, changes);
  }
  add_fit_ranges(pair, changes);
}

}  // namespace

SizeFact size_fact(const SizeRun& run, const SizeGroup& group) {
  SizeFact fact{
      group.system, group.fit, {}, run.slots[group.smallest].label, run.slots[group.largest].label};
  for (std::size_t slot = group.begin; slot < group.end; ++slot) {
    fact.labels.push_back(run.slots[slot].label);
  }
  return fact;
}

void diff_sizes(const LinePair& pair, PairChanges& changes, SilenceLog& silences) {
  const SizeRun& before = *pair.sizes_before;
  const SizeRun& after = *pair.sizes_after;
  if (&before == &after) return;
  if (!before.stated || !after.stated) {
    if (before.stated != after.stated) silences.add(Silence::sizes, pair.now().card);
    return;
  }
  if (before.unranked != after.unranked) {
    silences.add(Silence::unranked_sizes, pair.now().card);
    return;
  }
  if (systems_differ(before, after)) silences.add(Silence::size_systems, pair.now().card);
  diff_ranked(pair, changes);
}

}  // namespace rangebook
