// A workbook: any bytes as the rows of a sheet, its shared strings and styles, and any bytes as a
// whole workbook, give rows and rejections and come to an end. Parts are separated by lines of
// `--`.
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "importers/xlsx_reader.h"
#include "tests/fuzz/read_everything.h"
#include "tests/importers/zip_of.h"

namespace rangebook {
namespace {

std::vector<std::string> parts_of(std::string_view text) {
  constexpr std::string_view kBetween = "\n--\n";
  std::vector<std::string> parts;
  while (true) {
    const std::size_t at = text.find(kBetween);
    parts.emplace_back(text.substr(0, at));
    if (at == text.npos) return parts;
    text.remove_prefix(at + kBetween.size());
  }
}

}  // namespace
}  // namespace rangebook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const std::string_view text = as_text(data, size);
  if (text.starts_with("PK")) {
    everything_of(*open_xlsx(std::string(text), 0));
    return 0;
  }
  auto parts = parts_of(text);
  parts.resize(3);
  const std::string bytes =
      workbook_of(parts[0], {{"xl/sharedStrings.xml", "<sst>" + parts[1] + "</sst>"},
                             {"xl/styles.xml", "<s>" + parts[2] + "</s>"}});
  everything_of(*open_xlsx(bytes, 0));
  return 0;
}
