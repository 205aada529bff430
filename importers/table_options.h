// What the user may say about a table where detection is wrong.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "schema/raw_row.h"

namespace rangebook {

/// What one column is for, where its name does not tell.
struct ColumnChoice {
  std::string column;          ///< its name, compared as all names are; or `#3`, counted from 1
  std::optional<Field> field;  ///< nothing: the column is not read
};

/// Whatever is not said is detected.
struct TableOptions {
  std::optional<char> delimiter;
  std::optional<char> quote;
  std::string encoding;                     ///< `windows-1252`, by any name ICU knows
  std::optional<std::uint64_t> header_row;  ///< line of the column names, from 1
  std::optional<char> decimal;              ///< '.' or ','
  std::string sheet;                        ///< of a workbook, by its name
  std::vector<ColumnChoice> columns;        ///< these win over what names say
};

}  // namespace rangebook
