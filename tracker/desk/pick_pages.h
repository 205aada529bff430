// The pages about picks: what was kept and became of it, keeping, changing, her words, what is due.
#pragma once

#include "tracker/desk/desk.h"

namespace rangebook {

/// `/picks`: by theme and review date.
DeskAnswer picks_desk_page(Desk& desk, const DeskAsk& ask);
/// `/picks/follow` and `/picks/notes`: reports, with their sources and as files.
DeskAnswer pick_follow_page(Desk& desk, const DeskAsk& ask);
DeskAnswer pick_notes_page(Desk& desk, const DeskAsk& ask);
/// `/due`
DeskAnswer due_desk_page(Desk& desk, const DeskAsk& ask);

/// `/picks/keep`: the form about a line, and what it sends.
DeskAnswer keep_pick_page(Desk& desk, const DeskAsk& ask);
DeskAnswer keep_pick_form(Desk& desk, const DeskAsk& ask);
/// `/picks/change`, of `pick`.
DeskAnswer change_pick_page(Desk& desk, const DeskAsk& ask);
DeskAnswer change_pick_form(Desk& desk, const DeskAsk& ask);
/// `/picks/drop`: asks first.
DeskAnswer drop_pick_page(Desk& desk, const DeskAsk& ask);
DeskAnswer drop_pick_form(Desk& desk, const DeskAsk& ask);

/// `/picks/words`, and the word that is named.
DeskAnswer pick_words_page(Desk& desk, const DeskAsk& ask);
DeskAnswer pick_word_page(Desk& desk, const DeskAsk& ask);
DeskAnswer add_pick_word_form(Desk& desk, const DeskAsk& ask);
DeskAnswer rename_pick_word_form(Desk& desk, const DeskAsk& ask);
DeskAnswer remove_pick_word_form(Desk& desk, const DeskAsk& ask);

/// `/lines`: what a capture of a shop shows, to look for a line and keep it.
DeskAnswer lines_page(Desk& desk, const DeskAsk& ask);

}  // namespace rangebook
