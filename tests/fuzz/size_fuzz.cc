// Fuzz entry: any bytes as a size cell and as labels; nothing may crash, and labels stay in limits.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "tracker/size_parser.h"

namespace {

void check(bool holds) {
  if (!holds) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using rangebook::SizeSystem;
  if (size == 0) return 0;
  const auto last = static_cast<std::uint8_t>(SizeSystem::one_size);
  const auto shop = static_cast<SizeSystem>(data[0] % (last + 1));
  const std::string_view cell(reinterpret_cast<const char*>(data) + 1, size - 1);
  const auto result = rangebook::expand_sizes(cell, shop);
  if (const auto* bad = std::get_if<rangebook::SizeProblem>(&result)) {
    check(!bad->what.empty() && !bad->how_to_fix.empty());
    return 0;
  }
  const auto& labels = std::get<std::vector<std::string>>(result);
  check(labels.size() <= rangebook::kMaxSizesPerCell);
  const auto sizes = rangebook::interpret_sizes(labels, shop);
  check(sizes.size() == labels.size());
  for (const auto& one : sizes) check(one.low <= one.high);
  return 0;
}
