// What became of a pick: its line in the capture it was picked from against the latest capture that
// looked for it.
#pragma once

#include <vector>

#include "schema/pick.h"
#include "tracker/line_history.h"

namespace rangebook {

/// `captures` by date, from the one the line was picked from; of a pick whose capture is not kept,
/// none; names and codes are then the caller's to say. A line counts as looked for where the scope
/// of a capture covers its category or is the stylist's picks (a capture made on the day of the
/// pick or later). Says nothing of changes yet.
FollowedPick follow_pick(const Shop& shop, const Pick& pick,
                         const std::vector<HistoryCapture>& captures);

/// What the comparison of the two captures says of the line. Not told from the line alone: whether
/// a markdown ended can hang on the capture stating markdowns at all.
void add_changes(FollowedPick& followed, const ChangeSet& between);

}  // namespace rangebook
