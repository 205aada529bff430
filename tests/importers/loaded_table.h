// A table as it was loaded, and how well it agrees with what it should be.
#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "importers/byte_search.h"
#include "importers/csv_reader.h"
#include "importers/table_rows.h"
#include "tests/importers/text_source.h"

namespace rangebook {

using Cells = std::vector<std::string>;

struct LoadedTable {
  Cells header;
  std::vector<Cells> rows;
  std::string told;  ///< how the document was understood
};

/// Cells without blanks around them; rows as wide as the table.
inline LoadedTable load_table(const std::string& text, const TableOptions& options = {},
                              std::size_t chunk = 1 << 16) {
  TextSource source(text, chunk);
  TableRows rows(open_csv_records(source, options), options);
  LoadedTable table;
  if (!rows.open()) return table;
  table.header = rows.names();
  Record record;
  while (rows.next(record)) {
    if (record.fault != RecordFault::none) continue;
    auto& row = table.rows.emplace_back();
    for (const auto cell : record.cells) row.emplace_back(without_blanks(cell));
    while (row.size() > rows.columns() && row.back().empty()) row.pop_back();
    row.resize(std::max(row.size(), rows.columns()));
  }
  table.told = rows.source().description() + "; " + rows.description();
  return table;
}

/// Precision, recall and their harmonic mean over multisets, summed: 0 to 3.
template <typename T>
double agreement(const std::vector<T>& found, const std::vector<T>& wanted) {
  if (found.empty() && wanted.empty()) return 3;
  if (found.empty() || wanted.empty()) return 0;
  std::map<T, long> counts;
  for (const auto& one : wanted) ++counts[one];
  double same = 0;
  for (const auto& one : found) same += counts[one]-- > 0 ? 1 : 0;
  const double precision = same / static_cast<double>(found.size());
  const double recall = same / static_cast<double>(wanted.size());
  return same == 0 ? 0 : precision + recall + 2 * precision * recall / (precision + recall);
}

/// 0 to 10: loaded at all, and agreement of header, records and cells.
inline double loading_score(const LoadedTable& found, const LoadedTable& wanted) {
  const auto cells = [](const LoadedTable& table) {
    Cells all;
    for (const auto& row : table.rows) all.insert(all.end(), row.begin(), row.end());
    return all;
  };
  const bool loaded = !found.header.empty() || !found.rows.empty();
  return (loaded ? 1 : 0) + agreement(found.header, wanted.header) +
         agreement(found.rows, wanted.rows) + agreement(cells(found), cells(wanted));
}

}  // namespace rangebook
