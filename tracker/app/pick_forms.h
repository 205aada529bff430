// Picks and what is due in the form that was asked for: the same for a command and for a page.
#pragma once

#include <string>

#include "schema/due.h"
#include "schema/pick.h"
#include "tracker/app/commands.h"

namespace rangebook {

/// In which form picks are shown.
enum class PickView : std::uint8_t { list, follow, notes };

std::string picks_in(const PickSheet& sheet, PickView view, const OutputChoice& output);
std::string due_in(const DueList& list, const OutputChoice& output);

}  // namespace rangebook
