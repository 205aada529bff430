// The order of a change set: total, so that the same captures always give the same bytes.
#pragma once

#include <vector>

#include "schema/change.h"

namespace rangebook {

/// By kind, then line code, name and category, then what changed, then the line's id and evidence.
/// Changes of the shop come before those of lines of the same kind.
void sort_changes(std::vector<Change>& changes);

}  // namespace rangebook
