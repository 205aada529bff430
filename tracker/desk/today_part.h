// What wants doing today: shops to go back to, picks to look at again, questions that wait.
#pragma once

#include <map>
#include <string>

#include "tracker/desk/desk_sheet.h"

namespace rangebook {

/// Pairs of lines that wait, by shop; shops without any are left out. Nothing where the book has
/// more shops than are counted for a page.
std::map<std::string, std::size_t> pairs_waiting(const Book& book);

void today_part(HtmlWriter& html, const Book& book,
                const std::map<std::string, std::size_t>& waiting);

}  // namespace rangebook
