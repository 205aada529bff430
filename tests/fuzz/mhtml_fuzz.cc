// Web archives: any bytes give rows or rejections, an end, and the same again; every place is one
// of the file.
#include <cstddef>
#include <cstdint>

#include "importers/mhtml_reader.h"
#include "importers/mime_body.h"
#include "importers/mime_parts.h"
#include "importers/utf8_sequence.h"
#include "tests/fuzz/read_everything.h"

namespace rangebook {
namespace {

void check_parts(std::string_view file) {
  const auto read = read_mime(file);
  const auto* document = std::get_if<MimeDocument>(&read);
  if (document == nullptr) return;
  for (const auto& part : document->parts) {
    const bool inside =
        part.body.empty() || (part.body.data() >= file.data() &&
                              part.body.data() + part.body.size() <= file.data() + file.size());
    require(inside, "a body is a part of the file");
    const auto body = MimeBody::decode(part.body, part.encoding);
    if (!body) continue;
    require(body->text().size() <= part.body.size() + 3, "decoding makes nothing longer");
    require(body->encoded_place(body->text().size()) <= part.body.size(), "places are in the body");
  }
}

std::size_t check_rows(std::string_view file) {
  const auto reader = open_mhtml(file, 0);
  std::size_t seen = 0;
  for (auto step = reader->next(); step != RowReader::Step::end; step = reader->next()) {
    ++seen;
    if (step == RowReader::Step::rejection) continue;
    require(reader->row().origin.byte <= file.size(), "a row stands in the file");
    for (const auto cell : reader->row().cells) {
      require(utf8_prefix(cell) == cell.size(), "cells are UTF-8");
    }
  }
  return seen;
}

}  // namespace
}  // namespace rangebook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const std::string file(as_text(data, size));
  check_parts(file);
  require(check_rows(file) > 0, "a file says something");
  require(everything_of(*open_mhtml(file, 0)) == everything_of(*open_mhtml(file, 0)),
          "reading twice gives the same");
  return 0;
}
