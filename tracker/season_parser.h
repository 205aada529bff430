// Reading season labels.
#pragma once

#include <string_view>

#include "schema/season.h"

namespace rangebook {

/// `AW26`, `aw 2026`, `FW26`, `Autumn/Winter 2026`, `SS26`, `Spring Summer 26`, `Fall 2026` give
/// the canonical code; anything else stays as it is (trimmed), without year and half.
Season parse_season(std::string_view text);

/// Earlier seasons first; labels without a year come last, by text.
bool season_less(const Season& a, const Season& b);

}  // namespace rangebook
