// Reads a document to its end and demands what holds for every reader.
#pragma once

#include <string>

#include "importers/row_reader.h"
#include "tests/fuzz/require.h"

namespace rangebook {

/// All rows and rejections as text, for comparing two readings.
inline std::string everything_of(RowReader& reader) {
  std::string out;
  reader.keep_examples();
  for (auto step = reader.next(); step != RowReader::Step::end; step = reader.next()) {
    if (step == RowReader::Step::rejection) {
      require(!reader.rejection().what.empty(), "a rejection says what is wrong");
      require(!reader.rejection().how_to_fix.empty(), "a rejection says how to fix it");
      out += reader.rejection().what + '\n';
      continue;
    }
    for (const auto cell : reader.row().cells) out.append(cell).push_back('\t');
    out += std::to_string(reader.row().origin.line) + '\n';
  }
  require(reader.next() == RowReader::Step::end, "the end stays the end");
  for (const auto& column : reader.preview().columns) {
    require(column.examples.size() <= kPreviewExamples, "no more examples than are shown");
    for (const auto& example : column.examples) out += example.text + '\n';
  }
  return out + reader.mapping();
}

/// The size of the chunks that the first line of a fuzz input asks for.
inline std::size_t chunk_size(std::string_view line) {
  return 1 + (line.empty() ? 0 : static_cast<unsigned char>(line.front()));
}

}  // namespace rangebook
