// The pages about delivery and return terms: what holds and since when, reading a policy, typing.
#pragma once

#include "tracker/desk/desk.h"

namespace rangebook {

/// `/terms`: every shop, or, of one shop, what waits for a yes, what holds, and what changed when.
DeskAnswer terms_page(Desk& desk, const DeskAsk& ask);
/// `/terms/answer`: a yes or no to `doubt`.
DeskAnswer answer_terms_doubt(Desk& desk, const DeskAsk& ask);

/// `/terms/read`: a policy as a file or a text, shown field by field before anything is kept.
DeskAnswer read_terms_page(Desk& desk, const DeskAsk& ask);
DeskAnswer read_terms_form(Desk& desk, const DeskAsk& ask);

/// `/terms/type`: fields as lines `field = value`.
DeskAnswer type_terms_page(Desk& desk, const DeskAsk& ask);
DeskAnswer type_terms_form(Desk& desk, const DeskAsk& ask);

}  // namespace rangebook
