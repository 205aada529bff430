// An XML feed as a row reader: RSS and Atom product feeds, and any list of products as elements.
#pragma once

#include <memory>

#include "importers/row_reader.h"
#include "schema/table_options.h"

namespace rangebook {

/// Of `options` the meanings of names and the decimal sign are used.
/// `document` is its index among the documents of the capture; `source` must outlive the reader.
/// Which element is a product is found in the front of the document and told by mapping().
/// Namespace prefixes do not matter (`g:price` is `price`); attributes count as elements. Memory is
/// bounded by one product and one piece of the document. A document type is refused, so no entity
/// is ever expanded.
std::unique_ptr<RowReader> open_xml(ByteSource& source, std::uint32_t document,
                                    const TableOptions& options = {});

}  // namespace rangebook
