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

namespace rangebook {

/// For each field the column it is read from, from 0.
struct FieldMap {
  std::array<std::optional<std::size_t>, kFieldCount> column{};
  std::size_t columns = 0;           ///< in the header
  std::vector<std::string> unknown;  ///< header names that mean no field, verbatim

  bool has(Field field) const { return column[static_cast<std::size_t>(field)].has_value(); }
  std::size_t known() const;
};

/// The field a header name means by schema/tables/fields.tsv; nothing if none.
std::optional<Field> field_named(std::string_view header);

/// Maps a header row. Where two columns mean the same field, the contract's own name wins, else
/// the first; the others are listed as unknown.
FieldMap map_header(std::span<const std::string_view> header);

/// Columns counted from 1, as spreadsheets do: `line_code=1 name=2; not used: Notes`.
std::string to_string(const FieldMap& map);

}  // namespace rangebook
