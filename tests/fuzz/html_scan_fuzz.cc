// The token scan on any bytes: blocks lie inside the page, in order, and their places are right.
#include "importers/html_scan.h"

#include <cstddef>
#include <cstdint>

#include "tests/fuzz/require.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto page = as_text(data, size);
  std::uint64_t end = 0;
  for (const auto& block : scan_page(page).json_ld) {
    require(block.byte >= end, "blocks stand in order");
    end = block.byte + block.text.size();
    require(end <= size, "a block ends inside the page");
    require(page.substr(block.byte, block.text.size()) == block.text, "a block is where it says");
    require(block.line == 1 + count_lines(page.substr(0, block.byte)), "a line is counted right");
  }
  return 0;
}
