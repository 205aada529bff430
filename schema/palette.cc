// Where a palette leans.
#include "schema/palette.h"

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<PaletteLean, 4> kLeanNames{{
    {PaletteLean::warm, "warm"},
    {PaletteLean::cool, "cool"},
    {PaletteLean::balanced, "balanced"},
    {PaletteLean::unclear, "unclear"},
}};

}  // namespace

std::string_view to_string(PaletteLean lean) { return name_of(kLeanNames, lean); }

PaletteLean lean_of(const Palette& palette) {
  const std::uint64_t warm = palette.undertones[static_cast<std::size_t>(Undertone::warm)];
  const std::uint64_t cool = palette.undertones[static_cast<std::size_t>(Undertone::cool)];
  if (warm + cool < kLeanColourways) return PaletteLean::unclear;
  if (warm * 100 >= (warm + cool) * kLeanPercent) return PaletteLean::warm;
  if (cool * 100 >= (warm + cool) * kLeanPercent) return PaletteLean::cool;
  return PaletteLean::balanced;
}

}  // namespace rangebook
