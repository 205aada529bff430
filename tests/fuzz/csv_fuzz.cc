// A CSV document: any bytes, in chunks of any size, give rows and rejections and come to an end;
// the size of the chunks changes nothing. The first line holds the size of the chunks.
#include <cstddef>
#include <cstdint>
#include <string>

#include "importers/csv_reader.h"
#include "tests/fuzz/require.h"
#include "tests/importers/text_source.h"

namespace rangebook {
namespace {

std::string everything_read(std::string_view text, std::size_t chunk) {
  TextSource source(std::string(text), chunk);
  const auto reader = open_csv(source, 0);
  std::string out;
  for (auto step = reader->next(); step != RowReader::Step::end; step = reader->next()) {
    if (step == RowReader::Step::rejection) {
      require(!reader->rejection().what.empty(), "a rejection says what is wrong");
      require(!reader->rejection().how_to_fix.empty(), "a rejection says how to fix it");
      out += reader->rejection().what + '\n';
      continue;
    }
    for (const auto cell : reader->row().cells) out.append(cell).push_back('\t');
    out += std::to_string(reader->row().origin.line) + '\n';
  }
  require(reader->next() == RowReader::Step::end, "the end stays the end");
  return out + reader->mapping();
}

}  // namespace
}  // namespace rangebook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto [line, text] = first_line(as_text(data, size));
  const std::size_t chunk = 1 + (line.empty() ? 0 : static_cast<unsigned char>(line.front()));
  require(everything_read(text, chunk) == everything_read(text, std::size_t{1} << 20U),
          "the size of the chunks changes nothing");
  return 0;
}
