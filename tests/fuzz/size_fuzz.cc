// Fuzz entry: the shop's size system on the first line, then a size cell. Labels stay in their
// limits, and whatever they mean has a sound order key.
#include "tests/fuzz/require.h"
#include "tracker/size_parser.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto [system, cell] = first_line(as_text(data, size));
  const auto shop = parse_size_system(system).value_or(SizeSystem::uk);
  const auto result = expand_sizes(cell, shop);
  if (const auto* bad = std::get_if<SizeProblem>(&result)) {
    require(!bad->what.empty() && !bad->how_to_fix.empty(), "a problem says what and how to fix");
    return 0;
  }
  const auto& labels = std::get<std::vector<std::string>>(result);
  require(labels.size() <= kMaxSizesPerCell, "a cell has a limited number of sizes");
  const auto sizes = interpret_sizes(labels, shop);
  require(sizes.size() == labels.size(), "every label has a meaning");
  for (const auto& one : sizes) {
    require(one.low <= one.high, "a size ends where it begins or later");
    require(one.ranked() || (one.low == 0 && one.high == 0), "an unknown label has no position");
  }
  return 0;
}
