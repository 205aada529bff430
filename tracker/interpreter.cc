// Cached interpretation of size runs, categories, colours and compositions.
#include "tracker/interpreter.h"

#include <algorithm>

#include "tracker/category_parser.h"
#include "tracker/colour_parser.h"
#include "tracker/composition_parser.h"
#include "tracker/size_parser.h"

namespace rangebook {
namespace {

/// Each label after its length, so that no two lists of labels share a key.
void append_key(const std::vector<std::string>& labels, std::string& key) {
  for (const std::string& label : labels) {
    const std::size_t size = label.size();
    key.append(reinterpret_cast<const char*>(&size), sizeof size).append(label);
  }
}

/// Among spellings of one size the shortest, then the first by bytes, is shown.
bool better_label(const std::string& a, const std::string& b) {
  return a.size() != b.size() ? a.size() < b.size() : a < b;
}

void add_group(SizeRun& run, std::size_t slot) {
  const Size& size = run.slots[slot];
  if (run.groups.empty() || run.groups.back().system != size.system ||
      run.groups.back().fit != size.fit) {
    run.groups.push_back({size.system, size.fit, slot, slot + 1, slot, slot});
    return;
  }
  SizeGroup& group = run.groups.back();
  group.end = slot + 1;
  if (size.low < run.slots[group.smallest].low) group.smallest = slot;
  if (size.high >= run.slots[group.largest].high) group.largest = slot;
}

/// Ranked sizes by position, one for each position.
void fill_slots(SizeRun& run, const std::vector<Size>& sizes) {
  for (const Size& size : sizes) {
    if (size.ranked()) run.slots.push_back(size);
  }
  std::sort(run.slots.begin(), run.slots.end(), [](const Size& a, const Size& b) {
    const auto order = position_of(a) <=> position_of(b);
    return order != 0 ? order < 0 : better_label(a.label, b.label);
  });
  const auto same = [](const Size& a, const Size& b) { return position_of(a) == position_of(b); };
  run.slots.erase(std::unique(run.slots.begin(), run.slots.end(), same), run.slots.end());
  for (std::size_t slot = 0; slot < run.slots.size(); ++slot) add_group(run, slot);
}

std::optional<std::size_t> slot_at(const SizeRun& run, const SizePosition& position) {
  const auto found = std::lower_bound(
      run.slots.begin(), run.slots.end(), position,
      [](const Size& size, const SizePosition& at) { return position_of(size) < at; });
  if (found == run.slots.end() || position_of(*found) != position) return std::nullopt;
  return static_cast<std::size_t>(found - run.slots.begin());
}

std::vector<std::string> stated_labels(const std::vector<std::string>& labels) {
  std::vector<std::string> stated;
  for (const std::string& label : labels) {
    if (!label.empty()) stated.push_back(label);
  }
  return stated;
}

/// What `labels` mean, read together with those of `others` that are not among them. The order in
/// which a set is read does not matter.
std::vector<Size> sizes_among(const std::vector<std::string>& labels,
                              const std::vector<std::string>& others, SizeSystem shop_sizes) {
  std::vector<std::string> all = labels;
  for (const std::string& other : others) {
    if (!other.empty() && std::find(labels.begin(), labels.end(), other) == labels.end()) {
      all.push_back(other);
    }
  }
  std::vector<Size> sizes = interpret_sizes(all, shop_sizes);
  sizes.resize(labels.size());
  return sizes;
}

SizeRun read_run(const std::vector<std::string>& labels, const std::vector<std::string>& others,
                 SizeSystem shop_sizes) {
  const std::vector<std::string> stated = stated_labels(labels);
  const std::vector<Size> sizes = sizes_among(stated, others, shop_sizes);
  SizeRun run;
  run.stated = !stated.empty() && stated.size() == labels.size();
  fill_slots(run, sizes);
  std::size_t next = 0;
  for (const std::string& label : labels) {
    run.slot_of.emplace_back();
    if (label.empty()) continue;
    const Size& size = sizes[next++];
    if (size.ranked()) {
      run.slot_of.back() = slot_at(run, position_of(size));
    } else {
      run.unranked.push_back(label);
    }
  }
  std::sort(run.unranked.begin(), run.unranked.end());
  return run;
}

bool share_a_label(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  return std::any_of(a.begin(), a.end(), [&b](const std::string& label) {
    return !label.empty() && std::find(b.begin(), b.end(), label) != b.end();
  });
}

}  // namespace

SizePosition position_of(const Size& size) { return {size.system, size.fit, size.low, size.high}; }

const SizeGroup* SizeRun::group(SizeSystem system, FitRange fit) const {
  for (const SizeGroup& each : groups) {
    if (each.system == system && each.fit == fit) return &each;
  }
  return nullptr;
}

bool SizeRun::has_fit(FitRange fit) const {
  return std::any_of(groups.begin(), groups.end(),
                     [fit](const SizeGroup& each) { return each.fit == fit; });
}

// Both states of a line mostly have the same labels, and are asked for several times in a row.
const SizeRun& Interpreter::size_run(const std::vector<std::string>& labels) {
  if (last_run_ != nullptr && labels == last_labels_) return *last_run_;
  key_.clear();
  append_key(labels, key_);
  std::unique_ptr<SizeRun>& run = runs_[key_];
  if (!run) run = std::make_unique<SizeRun>(read_run(labels, {}, sizes_));
  last_labels_ = labels;
  last_run_ = run.get();
  return *run;
}

const SizeRun& Interpreter::run_among(const std::vector<std::string>& labels,
                                      const std::vector<std::string>& others) {
  constexpr std::size_t kNoLength = std::string::npos;  // parts the lists, as no label is so long
  key_.clear();
  append_key(labels, key_);
  key_.append(reinterpret_cast<const char*>(&kNoLength), sizeof kNoLength);
  append_key(others, key_);
  std::unique_ptr<SizeRun>& run = runs_[key_];
  if (!run) run = std::make_unique<SizeRun>(read_run(labels, others, sizes_));
  return *run;
}

SizeRunPair Interpreter::size_runs(const std::vector<std::string>& before,
                                   const std::vector<std::string>& after) {
  if (before != after && share_a_label(before, after)) {
    return {&run_among(before, after), &run_among(after, before)};
  }
  return {&size_run(before), &size_run(after)};
}

std::string_view Interpreter::stated_category(const LineCard& card) {
  const auto [found, added] = categories_.try_emplace(card.category);
  if (added) found->second = find_category(card.category, {});
  return found->second;
}

// The name is asked only where the category says nothing, so few lines need a look-up of their own.
std::string_view Interpreter::category(const LineCard& card) {
  const std::string_view stated = stated_category(card);
  return stated == kUnsorted ? find_category(card.category, card.name) : stated;
}

const std::string& Interpreter::colour_key(const std::string& colour) {
  const auto [found, added] = colours_.try_emplace(colour);
  if (added) found->second = rangebook::colour_key(colour);
  return found->second;
}

const std::optional<Composition>& Interpreter::composition(const std::string& text) {
  const auto [found, added] = compositions_.try_emplace(text);
  if (added) found->second = parse_composition(text);
  return found->second;
}

}  // namespace rangebook
