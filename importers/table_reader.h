// A table as a row reader: columns by name, whatever the rows come from.
#pragma once

#include <memory>

#include "importers/record_source.h"
#include "importers/row_reader.h"
#include "schema/table_options.h"

namespace rangebook {

/// Reads the records of `source` as rows. `document` is its index among the documents of the
/// capture. A table without a name column gives one rejection and no row.
std::unique_ptr<RowReader> open_table(std::unique_ptr<RecordSource> source, std::uint32_t document,
                                      const TableOptions& options = {});

}  // namespace rangebook
