// Whole pages: rows or rejections come out, an end is reached, and what comes out is UTF-8.
#include <cstddef>
#include <cstdint>

#include "importers/page_reader.h"
#include "importers/utf8_sequence.h"
#include "tests/fuzz/require.h"

namespace rangebook {
namespace {

bool is_utf8(std::string_view text) { return utf8_prefix(text) == text.size(); }

void check(const RawRow& row, std::size_t size) {
  for (const auto cell : row.cells) require(is_utf8(cell), "cells are UTF-8");
  require(row.origin.byte <= 4 * size, "a row stands in the document");
}

void check(const Rejection& rejection) {
  require(!rejection.what.empty() && !rejection.how_to_fix.empty(), "a rejection explains itself");
  require(rejection.excerpt.size() <= kExcerptBytes, "an excerpt is short");
}

}  // namespace
}  // namespace rangebook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto page = as_text(data, size);
  looks_like_page(page);
  const auto reader = open_page(page, 0);
  std::size_t seen = 0;
  for (auto step = reader->next(); step != RowReader::Step::end; step = reader->next()) {
    ++seen;
    step == RowReader::Step::row ? check(reader->row(), size) : check(reader->rejection());
  }
  require(seen > 0, "a page says something");
  require(!reader->mapping().empty(), "a page says how it was read");
  return 0;
}
