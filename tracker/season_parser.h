// Reading season labels.
#pragma once

#include <cstddef>
#include <string_view>

#include "schema/season.h"

namespace rangebook {

/// Longer labels are kept without being read.
inline constexpr std::size_t kMaxSeasonBytes = 60;

/// `AW26`, `aw 2026`, `FW26`, `A/W 26`, `Autumn/Winter 2026`, `AW26/27`, `SS26`, `Spring Summer
/// 26`, `Fall 2026`, `Herbst/Winter 26` give the canonical code (`AW26`; the year in full outside
/// 2000-2099); a single word such as "Winter" means its half. Anything else, such as "Cruise 26",
/// stays as it is (trimmed), without year and half. Codes are common practice, no source; words of
/// other languages from memory.
Season parse_season(std::string_view text);

/// Earlier seasons first, spring/summer before autumn/winter of a year; labels without a year come
/// last, by text. Total over canonical seasons. Holds for one hemisphere at a time: the codes name
/// seasons, not dates.
bool season_less(const Season& a, const Season& b);

}  // namespace rangebook
