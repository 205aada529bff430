// Which line is which in a shop's captures: the stage between snapshots and differences.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "schema/identity.h"
#include "tracker/identity/roll.h"
#include "tracker/likeness/likeness_matcher.h"
#include "tracker/store/book.h"
#include "tracker/store/roll_reader.h"

namespace rangebook {

/// Where linking by likeness parts its bands in a shop.
LikenessOptions likeness_options(const Shop& shop);

/// The lines of a shop. Captures from place `looked_at` on are not searched for renamed lines, but
/// what their codes say against earlier links counts.
Identities identify(const Book& book, const Roll& roll, StoredLines& lines, std::size_t looked_at);

/// The place of a capture in the roll.
std::optional<std::uint32_t> place_of(const Roll& roll, std::int64_t capture);

/// The lines of `after` that are not in `before` but were seen ahead of both, each as it was last
/// seen then.
std::vector<EarlierLine> seen_earlier(const Roll& roll, const Identities& identities,
                                      StoredLines& lines, std::uint32_t before,
                                      std::uint32_t after);

}  // namespace rangebook
