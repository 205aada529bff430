// Fields of longer forms: texts of several lines, words to tick, words that were used before.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "schema/day.h"
#include "tracker/desk/desk_sheet.h"

namespace rangebook {

void long_text_field(HtmlWriter& html, std::string_view name, std::string_view label,
                     std::string_view value, std::string_view hint, std::size_t rows);
/// A text field that offers words; others can be typed.
void offered_field(HtmlWriter& html, std::string_view name, std::string_view label,
                   std::string_view value, const std::vector<std::string>& offered,
                   std::string_view hint);
/// Words of which any number is ticked; each is sent as a value of `name`.
void tick_fields(HtmlWriter& html, std::string_view name, std::string_view legend,
                 const std::vector<std::string>& words, const std::vector<std::string>& ticked);

/// The day of a field, nothing where it is empty; throws UsageError for words that are no date.
std::optional<Day> asked_day(const DeskAsk& ask, std::string_view name, std::string_view label);

}  // namespace rangebook
