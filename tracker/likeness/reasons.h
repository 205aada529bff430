// Why two lines were taken for one, in words.
#pragma once

#include <string>

#include "schema/snapshot.h"
#include "tracker/likeness/pair_view.h"

namespace rangebook {

/// `nearly the same name, same composition 100% viscose, price 79.90 -> 85.00 EUR`: what speaks for
/// the pair, then what speaks against it.
std::string reason_of(const PairView& view, const LineProfile& from, const LineProfile& to);

}  // namespace rangebook
