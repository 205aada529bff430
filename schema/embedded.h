// Reference tables and migrations, compiled into the program so that one binary is the whole tool.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace rangebook {

/// A text file below `schema/`, for instance `tables/fibres.tsv`.
struct EmbeddedFile {
  std::string_view name;
  std::string_view text;
};

/// All embedded files, ordered by name.
std::span<const EmbeddedFile> embedded_files();

/// The text of one embedded file; nothing if there is no such file.
std::optional<std::string_view> embedded_file(std::string_view name);

/// The cells of each data row of an embedded TSV. Lines that start with `#` (they name the source)
/// and the header line are left out. Throws Error when the table does not exist: a broken build,
/// not bad input.
std::vector<std::vector<std::string_view>> table_rows(std::string_view name);

}  // namespace rangebook
