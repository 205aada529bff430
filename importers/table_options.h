// What the user may say about a table where detection is wrong.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace rangebook {

/// Whatever is not said is detected.
struct TableOptions {
  std::optional<char> delimiter;
  std::optional<char> quote;
  std::string encoding;                     ///< `windows-1252`, by any name ICU knows
  std::optional<std::uint64_t> header_row;  ///< line of the column names, from 1
  std::optional<char> decimal;              ///< '.' or ','
  std::string sheet;                        ///< of a workbook, by its name
};

}  // namespace rangebook
