// Which of the places that terms name cover a country.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "schema/terms.h"

namespace rangebook {

/// How closely a place fits: a country by its own code before a group of countries before `world`.
enum class RegionFit : std::uint8_t { none, world, group, exact };

/// `place`: an ISO 3166-1 code, `EU`, `europe` or `world`; a part of a country (`GB-NIR`) covers no
/// whole country.
RegionFit region_fit(std::string_view place, std::string_view country);
RegionFit best_fit(const std::vector<std::string>& places, std::string_view country);

/// The return policy for customers in `country`: the closest, else the one without a region.
const ReturnPolicy* policy_for(const Terms& terms, std::string_view country);

/// The legal minimum of days to withdraw, where the table has one, and its source.
struct StatutoryWindow {
  int days = 0;
  std::string_view source;
};
std::optional<StatutoryWindow> statutory_window(std::string_view country);

}  // namespace rangebook
