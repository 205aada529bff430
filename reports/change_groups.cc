// Filters, counts and orders over the changes of a set.
#include "reports/change_groups.h"

#include <algorithm>
#include <map>
#include <set>

#include "reports/wording.h"

namespace rangebook {
namespace {

std::int64_t move_size(const Change& change) {
  const std::int64_t move = price_move(change).value_or(0);
  return move < 0 ? -move : move;
}

}  // namespace

ChangeList of_kinds(const ChangeSet& set, std::initializer_list<ChangeKind> kinds) {
  ChangeList found;
  for (const Change& change : set.changes) {
    if (std::find(kinds.begin(), kinds.end(), change.kind) != kinds.end()) found.push_back(&change);
  }
  return found;
}

std::size_t lines_in(const ChangeList& changes) {
  std::set<LineId> ids;
  for (const Change* change : changes) {
    if (change->line) ids.insert(change->line->id);
  }
  return ids.size();
}

std::vector<std::pair<std::string, std::size_t>> lines_by_category(const ChangeList& changes) {
  std::map<std::string, std::set<LineId>> ids;
  for (const Change* change : changes) {
    if (change->line) ids[change->line->category].insert(change->line->id);
  }
  std::vector<std::pair<std::string, std::size_t>> counts;
  counts.reserve(ids.size());
  for (const auto& [category, lines] : ids) counts.emplace_back(category, lines.size());
  std::stable_sort(counts.begin(), counts.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  return counts;
}

Phrase joined(const std::vector<Phrase>& items) {
  Phrase all;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) all.words(i + 1 == items.size() ? " and " : ", ");
    all.append(items[i]);
  }
  return all;
}

std::optional<std::int64_t> price_move(const Change& change) {
  const auto* before = fact_of<PriceFact>(change.before);
  const auto* after = fact_of<PriceFact>(change.after);
  if (before == nullptr || after == nullptr) return std::nullopt;
  if (before->amount.currency != after->amount.currency) return std::nullopt;
  return per_mille_change(before->amount.minor, after->amount.minor);
}

void sort_by_move(ChangeList& changes) {
  std::vector<std::pair<std::int64_t, const Change*>> sized;
  sized.reserve(changes.size());
  for (const Change* change : changes) sized.emplace_back(move_size(*change), change);
  std::stable_sort(sized.begin(), sized.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  std::transform(sized.begin(), sized.end(), changes.begin(),
                 [](const auto& each) { return each.second; });
}

const CategorySummary* summary_of(const ChangeSet& set, std::string_view category) {
  for (const CategorySummary& summary : set.categories) {
    if (summary.category == category) return &summary;
  }
  return nullptr;
}

}  // namespace rangebook
