// Shares of lines in words, with the interval a partial capture leaves.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "schema/change.h"

namespace rangebook {

/// In tenths of a percent, rounded; 0 of nothing.
std::uint32_t per_mille(std::uint32_t part, std::uint32_t whole);

/// `16.7%`; `-` of nothing.
std::string share_words(std::uint32_t part, std::uint32_t whole);

/// `7–36%`, rounded outwards to whole percents, so that rounding claims nothing more.
std::string interval_words(const ShareInterval& interval);

/// ` (95%: 7–36%)`, or nothing.
std::string interval_note(const std::optional<ShareInterval>& interval);

/// How many lines have the size in stock: `3`, or `3 (2 not stated)`.
std::string stock_words(const ReachStep& step);

}  // namespace rangebook
