// The columns of a table as a preview shows them: meaning, the first different cells, doubts.
#pragma once

#include <deque>
#include <string>
#include <vector>

#include "importers/field_map.h"
#include "importers/record_source.h"
#include "importers/table_header.h"
#include "schema/mapping_preview.h"
#include "schema/raw_row.h"

namespace rangebook {

class ColumnExamples {
 public:
  /// `first` are the first records of the body: where no column is known to be the name, no row is
  /// ever given, and their cells are the examples.
  void begin(const std::vector<std::string>& names, const FieldMap& map,
             const std::deque<KeptRecord>& first);
  /// A record and the row that was made of it.
  void take(const Record& record, const RawRow& row);

  const std::vector<ColumnPreview>& columns() const { return columns_; }

 private:
  void describe(std::size_t column, const std::string& name, const FieldMap& map);

  std::vector<ColumnPreview> columns_;
  std::size_t wanting_ = 0;  ///< columns with too few examples
};

}  // namespace rangebook
