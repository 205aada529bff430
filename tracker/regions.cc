// Places by tables/regions.tsv.
#include "tracker/regions.h"

#include <charconv>

#include "schema/embedded.h"
#include "schema/error.h"

namespace rangebook {
namespace {

bool lists(std::string_view members, std::string_view country) {
  while (!members.empty()) {
    const auto end = std::min(members.find('|'), members.size());
    if (members.substr(0, end) == country) return true;
    members.remove_prefix(std::min(end + 1, members.size()));
  }
  return false;
}

}  // namespace

RegionFit region_fit(std::string_view place, std::string_view country) {
  if (country.empty()) return RegionFit::none;
  if (place == country) return RegionFit::exact;
  if (place == "world") return RegionFit::world;
  static const auto groups = table_rows("tables/regions.tsv");
  for (const auto& row : groups) {
    if (row.at(0) == place && lists(row.at(1), country)) return RegionFit::group;
  }
  return RegionFit::none;
}

RegionFit best_fit(const std::vector<std::string>& places, std::string_view country) {
  auto best = RegionFit::none;
  for (const std::string& place : places) best = std::max(best, region_fit(place, country));
  return best;
}

const ReturnPolicy* policy_for(const Terms& terms, std::string_view country) {
  const ReturnPolicy* found = find_policy(terms, "");
  auto best = RegionFit::none;
  for (const ReturnPolicy& policy : terms.returns) {
    const auto fit = region_fit(policy.region, country);
    if (fit > best) {
      best = fit;
      found = &policy;
    }
  }
  return found;
}

std::optional<StatutoryWindow> statutory_window(std::string_view country) {
  static const auto rows = table_rows("tables/statutory_windows.tsv");
  for (const auto& row : rows) {
    if (region_fit(row.at(0), country) == RegionFit::none) continue;
    StatutoryWindow window;
    const auto& days = row.at(1);
    if (std::from_chars(days.data(), days.data() + days.size(), window.days).ec != std::errc{}) {
      throw Error("tables/statutory_windows.tsv: the days are no number");
    }
    window.source = row.at(2);
    return window;
  }
  return std::nullopt;
}

}  // namespace rangebook
