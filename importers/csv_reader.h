// A CSV document as a row reader, whatever its delimiter, quotes and encoding.
#pragma once

#include <memory>
#include <string_view>

#include "importers/record_source.h"
#include "importers/row_reader.h"
#include "schema/table_options.h"

namespace rangebook {

/// Opens a CSV document for reading. `document` is its index among the documents of the capture.
/// Encoding, dialect and header are detected unless `options` state them; mapping() tells what was
/// found. A table without a `name` column gives one rejection and no row. In a document that is not
/// in UTF-8, bytes are counted in its text as UTF-8.
std::unique_ptr<RowReader> open_csv(ByteSource& source, std::uint32_t document,
                                    const TableOptions& options = {});

/// The records alone, before anything is known about header and columns.
std::unique_ptr<RecordSource> open_csv_records(ByteSource& source, const TableOptions& options);

}  // namespace rangebook
