// The pages about which line is which: what waits, what was said, and the forms that answer.
#pragma once

#include "tracker/desk/desk.h"

namespace rangebook {

/// `/links`: one pair of a shop, or, without a shop, how many wait in each.
DeskAnswer links_page(Desk& desk, const DeskAsk& ask);
/// `/links/said`: what was decided of a shop's lines, newest first.
DeskAnswer links_said_page(Desk& desk, const DeskAsk& ask);
/// `/links/answer`: a yes or no to `pair`.
DeskAnswer answer_link(Desk& desk, const DeskAsk& ask);
/// `/links/back`: takes the decision about `pair` back, where it still is what `said` says.
DeskAnswer take_link_back(Desk& desk, const DeskAsk& ask);

}  // namespace rangebook
