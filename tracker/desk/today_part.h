// What wants doing today: shops to go back to, picks to look at again, questions that wait.
#pragma once

#include <map>
#include <string>

#include "tracker/app/pick_desk.h"
#include "tracker/desk/desk_sheet.h"

namespace rangebook {

/// Pairs of lines that wait, by shop; shops without any are left out.
std::map<std::string, std::size_t> pairs_waiting(const Desk& desk, const Book& book);

void today_part(HtmlWriter& html, const DueList& due,
                const std::map<std::string, std::size_t>& waiting);

}  // namespace rangebook
