// One shop of the index: a pure function of its latest snapshot.
#pragma once

#include <string_view>

#include "schema/shop_index.h"
#include "schema/snapshot.h"

namespace rangebook {

/// Fills what the snapshot says of a category, a slug or `all`: sizes, prices, palette.
void read_entry(const Snapshot& snapshot, std::string_view category, ShopEntry& entry);

}  // namespace rangebook
