// What wants doing today: shops to go back to, picks to look at again, questions that wait.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "tracker/app/pick_desk.h"
#include "tracker/desk/desk_sheet.h"

namespace rangebook {

/// Pairs of lines that wait, by shop; shops without any are left out.
std::map<std::string, std::size_t> pairs_waiting(const Desk& desk, const Book& book);

/// Nothing where they were not counted.
using PairsWaiting = std::optional<std::map<std::string, std::size_t>>;

void today_part(HtmlWriter& html, const DueList& due, const PairsWaiting& waiting);

}  // namespace rangebook
