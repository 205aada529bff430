// The manual CSV contract as a row reader: header row, delimiter, columns by name.
#pragma once

#include <memory>
#include <string_view>

#include "importers/row_reader.h"

namespace rangebook {

/// Opens a CSV document for reading. `document` is its index among the documents of the capture.
/// The delimiter (comma, semicolon, tab or bar) is the one under which the header row holds the
/// most known names. UTF-8, with or without byte order mark. A table without a `name` column gives
/// one rejection and no row.
std::unique_ptr<RowReader> open_csv(ByteSource& source, std::uint32_t document);

}  // namespace rangebook
