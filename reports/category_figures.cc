// Pairing the figures of both captures.
#include "reports/category_figures.h"

namespace rangebook {
namespace {

const PriceLadder* same_currency(const CategorySide& side, Currency currency) {
  for (const PriceLadder& each : side.prices) {
    if (each.currency == currency) return &each;
  }
  return nullptr;
}

}  // namespace

std::vector<LadderPair> ladder_pairs(const CategorySummary& summary) {
  std::vector<LadderPair> pairs;
  for (const PriceLadder& now : summary.after.prices) {
    pairs.push_back({&summary, same_currency(summary.before, now.currency), &now});
  }
  for (const PriceLadder& then : summary.before.prices) {
    if (same_currency(summary.after, then.currency) == nullptr) {
      pairs.push_back({&summary, &then, nullptr});
    }
  }
  return pairs;
}

std::vector<const CategorySummary*> summaries_of(const ChangeSet& set, std::string_view category) {
  std::vector<const CategorySummary*> found;
  for (const CategorySummary& summary : set.categories) {
    if (category.empty() || summary.category == category) found.push_back(&summary);
  }
  return found;
}

std::vector<const WasPriceFinding*> findings_of(const ChangeSet& set, std::string_view category) {
  std::vector<const WasPriceFinding*> found;
  if (!set.was_prices) return found;
  for (const WasPriceFinding& finding : set.was_prices->findings) {
    if (category.empty() || category == "all" || finding.line.category == category) {
      found.push_back(&finding);
    }
  }
  return found;
}

}  // namespace rangebook
