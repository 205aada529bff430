// A line as one capture shows it, in words and as JSON.
#pragma once

#include <string>

#include "reports/json_writer.h"
#include "schema/line_history.h"

namespace rangebook {

/// `£79.90`, or `£59.90 to £79.90`.
std::string span_words(const PriceSpan& span);
/// `UK 8-20; petite UK 8-12, one size`; empty where no size is stated.
std::string sizes_words(const SeenLine& line);
/// `navy, ecru`.
std::string colours_words(const SeenLine& line);

/// The object `line` of `rangebook.history/1`, see schema/FORMAT.md.
void write_seen_line(JsonWriter& json, const SeenLine& seen);
void write_strings(JsonWriter& json, std::string_view key, const std::vector<std::string>& texts);

}  // namespace rangebook
