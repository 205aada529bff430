// A JSON feed as a row reader: a list of products, products one a line, or a list somewhere inside.
#pragma once

#include <memory>

#include "importers/row_reader.h"
#include "schema/table_options.h"

namespace rangebook {

/// Of `options` the meanings of names and the decimal sign are used.
/// `document` is its index among the documents of the capture; `source` must outlive the reader.
/// Which list holds the products is found in the front of the document and told by mapping().
/// Memory is bounded by one product. A product that is no JSON costs itself only where products
/// stand one a line.
std::unique_ptr<RowReader> open_json(ByteSource& source, std::uint32_t document,
                                     const TableOptions& options = {});

}  // namespace rangebook
