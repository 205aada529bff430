// Everything known of one line of a shop.
#pragma once

#include <string>
#include <variant>

#include "schema/line_history.h"
#include "tracker/app/pipeline.h"
#include "tracker/store/book.h"

namespace rangebook {

/// By code, reference or name. With an empty shop every shop is asked; a line in several, or
/// several in one, is a sentence that lists them.
std::variant<LineHistory, NotThere> line_history(const Book& book, const std::string& shop,
                                                 const std::string& word);

}  // namespace rangebook
