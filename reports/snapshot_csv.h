// A capture written back as the manual CSV contract: taking it in again gives the same versions.
#pragma once

#include <string>

#include "schema/snapshot.h"

namespace rangebook {

/// One row a variant, lines in the order of their ids. Cells are exact, so this file is for
/// rangebook and other programs; it is not defused for spreadsheets. `group_id` and `variant_code`
/// are written only when a line has them. Needs a snapshot read with details.
std::string snapshot_csv(const Snapshot& snapshot);

}  // namespace rangebook
