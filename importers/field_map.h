// Which column of a table means what. Shown with the capture and kept in the book, so a figure can
// be traced to the column it was read from.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "schema/raw_row.h"
#include "schema/table_options.h"

namespace rangebook {

/// For each field the column it is read from, from 0.
struct FieldMap {
  using Columns = std::array<std::optional<std::size_t>, kFieldCount>;

  Columns column{};
  Columns fallback{};                      ///< read where the cell of `column` is empty
  std::optional<std::size_t> colour_size;  ///< holds both, where there is no column for either
  std::string currency;              ///< ISO code that a price column states, where no column does
  std::size_t columns = 0;           ///< in the header
  std::vector<std::string> unknown;  ///< header names that mean no field, verbatim
  bool guessed = false;              ///< by content: the table has no header
  std::vector<std::size_t> doubled;  ///< columns whose field is read from another one
  std::vector<std::size_t> chosen;   ///< columns the user has spoken of
  std::vector<std::string> missing;  ///< columns the user has spoken of and that are not there

  bool has(Field field) const { return column[static_cast<std::size_t>(field)].has_value(); }
  std::size_t known() const;
};

/// The field a header name means by schema/tables/fields.tsv; nothing if none.
std::optional<Field> field_named(std::string_view header);

/// Maps a header row. Where two columns mean the same field, the contract's own name wins, else
/// the first; the others are listed as unknown. Beside a column of sale prices, `price` is the full
/// price, and the price of rows that are not on sale. In a table without names of lines their
/// descriptions are taken for names.
FieldMap map_header(std::span<const std::string_view> header);

/// The same with what the user says about single columns. `columns` is the width of the table, for
/// one without a header. A choice for a column that is not there is listed as missing.
FieldMap map_header(std::span<const std::string_view> header, std::size_t columns,
                    std::span<const ColumnChoice> choices);

/// Columns counted from 1, as spreadsheets do: `line_code=1 name=2; not used: Notes`.
std::string to_string(const FieldMap& map);

}  // namespace rangebook
