// An archive: any bytes give documents with names that stay inside, or refusals, and come to an
// end.
#include <cstddef>
#include <cstdint>
#include <string>

#include "importers/container.h"
#include "tests/fuzz/require.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto archive = open_archive(std::string(as_text(data, size)));
  for (auto step = archive->next(); step != Container::Step::end; step = archive->next()) {
    if (step == Container::Step::refused) {
      require(!archive->fault().what.empty(), "a refusal says what is wrong");
      continue;
    }
    require(!archive->name().starts_with('/'), "no name leads out of the archive");
    require(archive->name().find("../") == std::string::npos ||
                archive->name().find("/../") == std::string::npos,
            "no name climbs out of the archive");
    auto& source = archive->source();
    while (!source.next_chunk().empty()) continue;
  }
  require(archive->next() == Container::Step::end, "the end stays the end");
  return 0;
}
