// Ordering changes.
#include "tracker/change_order.h"

#include <algorithm>
#include <compare>
#include <utility>

namespace rangebook {
namespace {

std::weak_ordering compare_lines(const std::optional<LineRef>& a, const std::optional<LineRef>& b) {
  if (!a || !b) return a.has_value() <=> b.has_value();
  if (const auto order = a->code <=> b->code; order != 0) return order;
  if (const auto order = a->name <=> b->name; order != 0) return order;
  return a->category <=> b->category;
}

bool less(const Change& a, const Change& b) {
  if (a.kind != b.kind) return a.kind < b.kind;
  if (const auto order = compare_lines(a.line, b.line); order != 0) return order < 0;
  if (const auto order = a.category <=> b.category; order != 0) return order < 0;
  if (const auto order = a.before <=> b.before; order != 0) return order < 0;
  if (const auto order = a.after <=> b.after; order != 0) return order < 0;
  if (const auto order = a.line <=> b.line; order != 0) return order < 0;
  return a.evidence < b.evidence;
}

}  // namespace

// A change is large, so pointers are sorted and each change is moved once.
void sort_changes(std::vector<Change>& changes) {
  std::vector<Change*> order;
  order.reserve(changes.size());
  for (Change& change : changes) order.push_back(&change);
  std::sort(order.begin(), order.end(),
            [](const Change* a, const Change* b) { return less(*a, *b); });
  std::vector<Change> sorted;
  sorted.reserve(changes.size());
  for (Change* change : order) sorted.push_back(std::move(*change));
  changes = std::move(sorted);
}

}  // namespace rangebook
