// What pages about a shop have in common: the shop, its captures, and the form to choose two.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "schema/change.h"
#include "tracker/app/request.h"
#include "tracker/desk/desk_sheet.h"

namespace rangebook {

/// What the address says of a comparison: `shop`, `from`, `to`.
CompareRequest comparison_of(const DeskAsk& ask);

/// Captures by season and day, the newest first, behind an empty choice with these words.
std::vector<Choice> capture_choices(const Book& book, const std::string& shop,
                                    const std::string& usual);
/// The fields `from` and `to`, and the shop as it is.
void pair_fields(HtmlWriter& html, const Book& book, const DeskAsk& ask);

/// A page about two captures: the book and the comparison that the address asks for; says what is
/// missing instead.
DeskAnswer compared_page(
    const Desk& desk, const DeskAsk& ask,
    const std::function<DeskAnswer(const Book& book, const ChangeSet& set)>& page);

/// That there is no book yet.
DeskAnswer no_book(const Desk& desk);

}  // namespace rangebook
