// Works out the figures of categories from the two states, the long way.
#include "demo-feeds/category_truth.h"

#include <algorithm>
#include <optional>
#include <set>

#include "demo-feeds/indices.h"

namespace demo {
namespace {

using Json = nlohmann::ordered_json;

bool in_scope(const std::string& scope, const std::string& category) {
  return scope == "all" || ("," + scope + ",").find("," + category + ",") != std::string::npos;
}

/// Both captures and one category, or `all` of what both looked at.
struct View {
  const Capture& from;
  const Capture& to;
  std::string category;
  std::string currency;

  bool holds(const Style& style) const {
    return (category == "all" || style.category == category) &&
           in_scope(from.scope, style.category) && in_scope(to.scope, style.category);
  }
  Json change(const std::string& kind, Json before, Json after) const {
    return {{"kind", kind},
            {"line", nullptr},
            {"category", category},
            {"before", std::move(before)},
            {"after", std::move(after)}};
  }
};

std::vector<SizeStep> offered(const View& view, const Range& range, System system, Fit fit) {
  std::set<SizeStep> sizes;
  for (const Style& style : range.styles) {
    if (!view.holds(style)) continue;
    for (const SizeStep& size : sizes_of(style, system, fit)) sizes.insert(size);
  }
  return {sizes.begin(), sizes.end()};
}

void reach_changes(const View& view, System system, Fit fit, std::vector<Json>& changes) {
  const auto then = offered(view, view.from.range, system, fit);
  const auto now = offered(view, view.to.range, system, fit);
  if (then.empty() || now.empty()) return;
  if (now.front() < then.front() || now.back() > then.back()) {
    changes.push_back(view.change("reach-widened", size_fact(then), size_fact(now)));
  }
  if (now.front() > then.front() || now.back() < then.back()) {
    changes.push_back(view.change("reach-narrowed", size_fact(then), size_fact(now)));
  }
}

std::optional<Minor> entry_price(const View& view, const Range& range) {
  std::optional<Minor> lowest;
  for (const Style& style : range.styles) {
    if (!view.holds(style)) continue;
    lowest = lowest ? std::min(*lowest, style.lowest_selling()) : style.lowest_selling();
  }
  return lowest;
}

Json price_fact(Minor amount, const std::string& currency) {
  return {{"amount_minor", amount}, {"currency", currency}};
}

void entry_changes(const View& view, std::vector<Json>& changes) {
  const auto then = entry_price(view, view.from.range);
  const auto now = entry_price(view, view.to.range);
  if (!then || !now || *then == *now) return;
  changes.push_back(view.change("entry-price-changed", price_fact(*then, view.currency),
                                price_fact(*now, view.currency)));
}

constexpr const char* kUnmoved = "1.000000";

Json index_fact(const std::string& jevons, const std::string& dutot, const std::string& carli,
                std::size_t lines) {
  return {{"jevons", jevons}, {"dutot", dutot}, {"carli", carli}, {"lines", lines}};
}

void index_changes(const View& view, std::vector<Json>& changes) {
  std::vector<PricePair> pairs;
  for (const Style& now : view.to.range.styles) {
    const Style* then = view.from.range.find(now.uid);
    if (then != nullptr && view.holds(now)) pairs.emplace_back(then->full, now.full);
  }
  if (pairs.empty() || jevons(pairs) == kUnmoved) return;
  const Json base = index_fact(kUnmoved, kUnmoved, kUnmoved, pairs.size());
  changes.push_back(view.change(
      "price-index", base, index_fact(jevons(pairs), dutot(pairs), carli(pairs), pairs.size())));
}

std::vector<std::string> categories(const Capture& from, const Capture& to) {
  std::set<std::string> slugs;
  for (const Style& style : from.range.styles) slugs.insert(style.category);
  for (const Style& style : to.range.styles) slugs.insert(style.category);
  std::vector<std::string> list{"all"};
  list.insert(list.end(), slugs.begin(), slugs.end());
  return list;
}

}  // namespace

nlohmann::ordered_json size_fact(const std::vector<SizeStep>& sizes) {
  std::vector<std::string> labels;
  for (const SizeStep& size : sizes) labels.push_back(label(size));
  return {{"system", to_string(sizes.front().system)},
          {"fit", to_string(sizes.front().fit)},
          {"labels", labels},
          {"min", labels.front()},
          {"max", labels.back()}};
}

std::vector<nlohmann::ordered_json> category_changes(const Capture& from, const Capture& to,
                                                     const std::string& currency) {
  std::vector<Json> changes;
  for (const std::string& category : categories(from, to)) {
    const View view{from, to, category, currency};
    for (const System system : {System::uk, System::alpha, System::one_size}) {
      for (const Fit fit : {Fit::regular, Fit::petite, Fit::tall}) {
        reach_changes(view, system, fit, changes);
      }
    }
    entry_changes(view, changes);
    index_changes(view, changes);
  }
  return changes;
}

}  // namespace demo
