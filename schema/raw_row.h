// A raw row: the cells of one record of a document, by meaning, before anything is interpreted.
// Every importer gives the same rows for the same facts.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace rangebook {

/// What a cell means. The first fourteen are the manual CSV contract, in its order; the rest are
/// optional further columns (schema/FORMAT.md).
enum class Field : std::uint8_t {
  line_code,
  name,
  category,
  colour,
  size,
  price,
  full_price,
  currency,
  in_stock,
  composition,
  description,
  url,
  image,
  gtin,
  group_id,      ///< the shop's id of the style when it differs from the line code
  variant_code,  ///< the shop's code of one colour and size
};
inline constexpr std::size_t kFieldCount = 16;

/// The column name of the manual CSV contract, for instance `full_price`.
std::string_view to_string(Field field);

/// Where a row stands in its document, so that each figure can be traced back.
struct Origin {
  std::uint32_t document = 0;  ///< index among the documents of the capture
  std::uint64_t line = 1;      ///< line of the file, from 1
  std::uint64_t byte = 0;      ///< offset of the row's first byte, from 0
};

/// Cells are UTF-8 and empty when the document does not have them. Views are owned by the
/// importer and valid until its next step.
struct RawRow {
  std::array<std::string_view, kFieldCount> cells{};
  Origin origin;

  std::string_view operator[](Field field) const { return cells[static_cast<std::size_t>(field)]; }
  std::string_view& operator[](Field field) { return cells[static_cast<std::size_t>(field)]; }
};

}  // namespace rangebook
