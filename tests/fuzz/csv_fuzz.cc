// A CSV document: any bytes, in chunks of any size, give rows and rejections and come to an
// end; the size of the chunks changes nothing. The first line holds the size of the chunks.
#include <cstddef>
#include <cstdint>
#include <string>

#include "importers/csv_reader.h"
#include "tests/fuzz/read_everything.h"
#include "tests/importers/text_source.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto [line, text] = first_line(as_text(data, size));
  TextSource pieces(std::string(text), chunk_size(line));
  TextSource whole(std::string(text), std::size_t{1} << 20U);
  require(everything_of(*open_csv(pieces, 0)) == everything_of(*open_csv(whole, 0)),
          "the size of the chunks changes nothing");
  return 0;
}
