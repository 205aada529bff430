// All rows and rejections of a document, with text of their own.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "importers/csv_reader.h"
#include "importers/row_reader.h"
#include "tests/importers/text_source.h"

namespace rangebook {

/// The cells that are not empty, by the name of their field.
using RowCells = std::map<std::string, std::string>;

struct ReadRows {
  std::vector<RowCells> rows;
  std::vector<Origin> origins;
  std::vector<Rejection> rejections;
  std::string mapping;
};

inline ReadRows read_all(RowReader& reader) {
  ReadRows out;
  for (auto step = reader.next(); step != RowReader::Step::end; step = reader.next()) {
    if (step == RowReader::Step::rejection) {
      out.rejections.push_back(reader.rejection());
      continue;
    }
    auto& cells = out.rows.emplace_back();
    for (std::size_t i = 0; i < kFieldCount; ++i) {
      const auto cell = reader.row().cells[i];
      if (!cell.empty()) cells.emplace(to_string(static_cast<Field>(i)), cell);
    }
    out.origins.push_back(reader.row().origin);
  }
  out.mapping = reader.mapping();
  return out;
}

inline ReadRows read_csv(const std::string& text, const TableOptions& options = {}) {
  TextSource source(text);
  return read_all(*open_csv(source, 0, options));
}

}  // namespace rangebook
