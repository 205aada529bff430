// Reading cells and lines that break the rules of their document: escapes, stray quotes, one line
// with another delimiter.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "importers/csv_dialect.h"

namespace rangebook {

/// `cell` with doubled quotes and escapes taken as the sign they stand for, into `out`. An escape
/// before any other sign is text.
void unescape_cell(std::string_view cell, const CsvDialect& dialect, std::string& out);

/// `cell` without blanks and the quotes around it.
std::string_view without_quotes(std::string_view cell, const CsvDialect& dialect);

/// The cells of `text` where a quote closes a cell only before a delimiter or the end.
std::vector<std::string> split_leniently(std::string_view text, const CsvDialect& dialect);

/// The one other reading of a line that gives exactly `columns` cells: stray quotes inside quoted
/// cells, or another usual delimiter on this line alone. Nothing when there is none or more than
/// one: a guess could put a price into the wrong column.
std::optional<std::vector<std::string>> split_otherwise(std::string_view text,
                                                        const CsvDialect& dialect,
                                                        std::size_t columns);

}  // namespace rangebook
