// What pages about a shop have in common: the shop, its captures, and the form to choose two.
#pragma once

#include <optional>
#include <string>
#include <vector>

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

/// That there is no book yet.
DeskAnswer no_book(const Desk& desk);

}  // namespace rangebook
