// The scan of workbook parts: where expat takes a document, it tells the same events. The first
// line holds the size of the pieces.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>

#include "importers/xml_scan.h"
#include "tests/fuzz/read_everything.h"
#include "tests/importers/xml_trace.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto [line, text] = first_line(as_text(data, size));
  const std::string wanted = trace<XmlParser>(text, std::size_t{1} << 20U);
  const std::string found = trace<XmlScan>(text, chunk_size(line));
  if (wanted.find(" problem: ") == std::string::npos) {
    require(found == wanted, "the scan tells what expat tells");
  }
  return 0;
}
