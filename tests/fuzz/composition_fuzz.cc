// Fuzz entry: any bytes as a composition; what is read has named parts with named fibres and
// shares above zero.
#include "tracker/composition_parser.h"

#include "tests/fuzz/require.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using rangebook::require;
  const auto composition = rangebook::parse_composition(rangebook::as_text(data, size));
  if (!composition) return 0;
  require(!composition->parts.empty(), "a composition has a part");
  for (const auto& part : composition->parts) {
    require(!part.part.empty(), "a part has a name");
    require(!part.fibres.empty(), "a part has a fibre");
    for (const auto& share : part.fibres) {
      require(!share.fibre.empty(), "a fibre has a name");
      require(share.hundredths > 0, "a share is above zero");
    }
  }
  return 0;
}
