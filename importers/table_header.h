// Finding the row of column names among the first records of a table.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "importers/record_source.h"
#include "schema/table_options.h"

namespace rangebook {

/// A record with text of its own.
struct KeptRecord {
  std::vector<std::string> cells;
  std::string text;
  std::uint64_t line = 1;
  std::uint64_t byte = 0;
  RecordFault fault = RecordFault::none;
  bool ended = true;
  bool after_gap = false;

  explicit KeptRecord(const Record& record);
  /// Views of this record, valid as long as it is.
  void view(Record& record) const;
};

/// Where the table begins among its first records.
struct HeaderPlace {
  std::size_t body = 0;            ///< index of the first record of the body
  std::size_t preamble = 0;        ///< records before the header
  std::vector<std::string> names;  ///< empty when there is no header
  std::size_t columns = 0;         ///< of the table
};

/// The header is the record that names the most fields, one of them the name. Failing that, the
/// first record as wide as most, when it is text where the columns below hold numbers, dates or
/// addresses. A second row of column names is joined to the first. `choices` tell names of columns
/// that would not be known.
HeaderPlace find_header(std::span<const KeptRecord> records,
                        std::span<const ColumnChoice> choices = {});

/// The header stands on this line of the file.
HeaderPlace header_on_line(std::span<const KeptRecord> records, std::uint64_t line);

/// The table has no header: it begins with the first record as wide as most.
HeaderPlace without_header(std::span<const KeptRecord> records);

}  // namespace rangebook
