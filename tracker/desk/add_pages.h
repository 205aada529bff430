// The pages on which a capture comes into the book: handing documents over, seeing what was
// understood and correcting it, keeping or dropping, and taking back.
#pragma once

#include "tracker/desk/desk.h"

namespace rangebook {

DeskAnswer add_page(Desk& desk, const DeskAsk& ask);
DeskAnswer add_script(Desk& desk, const DeskAsk& ask);
DeskAnswer take_upload(Desk& desk, const DeskAsk& ask);
DeskAnswer held_page(Desk& desk, const DeskAsk& ask);
DeskAnswer say_words(Desk& desk, const DeskAsk& ask);
DeskAnswer say_reading(Desk& desk, const DeskAsk& ask);
DeskAnswer keep_held(Desk& desk, const DeskAsk& ask);
DeskAnswer drop_held(Desk& desk, const DeskAsk& ask);
DeskAnswer keeping_page(Desk& desk, const DeskAsk& ask);
DeskAnswer kept_page(Desk& desk, const DeskAsk& ask);
DeskAnswer undo_kept(Desk& desk, const DeskAsk& ask);

}  // namespace rangebook
