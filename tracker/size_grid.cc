// The grids of the numeric size systems and the rules that tell one from another.
#include "tracker/size_grid.h"

#include <array>
#include <optional>

namespace rangebook {
namespace {

/// Bounds in tenths. `wide_last` counts when the set also has a size of kWideFrom or less: a set
/// from 16 to 40 is UK plus sizes, a set from 36 to 42 is not UK at all.
struct Grid {
  SizeSystem system = SizeSystem::unknown;
  int first = 0;
  int last = 0;
  int wide_last = 0;
  int step = 0;
};
constexpr int kWideFrom = 280;

constexpr std::array<Grid, 11> kGrids{{
    {SizeSystem::uk, 20, 360, 440, 20},
    {SizeSystem::au, 40, 300, 360, 20},
    {SizeSystem::us, 0, 320, 440, 20},
    {SizeSystem::eu, 300, 600, 600, 20},
    {SizeSystem::fr, 300, 600, 600, 20},
    {SizeSystem::it, 340, 660, 660, 20},
    {SizeSystem::jp, 30, 310, 310, 20},
    {SizeSystem::waist_length, 200, 600, 600, 10},
    {SizeSystem::footwear_uk, 10, 150, 150, 10},
    {SizeSystem::footwear_eu, 300, 500, 500, 10},
    {SizeSystem::footwear_us, 10, 170, 170, 10},
}};

std::optional<Grid> grid_of(SizeSystem system) {
  for (const auto& grid : kGrids) {
    if (grid.system == system) return grid;
  }
  return std::nullopt;
}

bool is_footwear(SizeSystem system) {
  return system == SizeSystem::footwear_uk || system == SizeSystem::footwear_eu ||
         system == SizeSystem::footwear_us;
}

bool parity_fits(const NumberSet& set, const Grid& grid) {
  if (is_footwear(grid.system)) return true;
  if (set.halves) return false;
  if (grid.step == 10) return true;
  return grid.system == SizeSystem::jp ? !set.even : !set.odd;
}

bool on_grid(const NumberSet& set, const Grid& grid) {
  if (set.double_zero && grid.system != SizeSystem::us) return false;
  const int first = set.double_zero ? set.min : grid.first;
  const int last = set.min <= kWideFrom ? grid.wide_last : grid.last;
  return set.min >= first && set.max <= last && parity_fits(set, grid);
}

bool on_grid(const NumberSet& set, SizeSystem system) {
  const auto grid = grid_of(system);
  return grid && on_grid(set, *grid);
}

/// Shoe numbers of the country the system stands for.
SizeSystem footwear_of(SizeSystem stated, const NumberSet& set) {
  if (set.min >= 300) return SizeSystem::footwear_eu;
  if (stated == SizeSystem::uk) return SizeSystem::footwear_uk;
  return stated == SizeSystem::us ? SizeSystem::footwear_us : SizeSystem::unknown;
}

/// A set with steps of one: waists start at 33 inches or less, adult EU shoes at 34 or more
/// (common practice, no source).
SizeSystem single_steps(const NumberSet& set, SizeSystem stated, bool marked) {
  if (!marked && set.min >= 200 && set.min <= 330) return SizeSystem::waist_length;
  const auto shoes = footwear_of(stated, set);
  return on_grid(set, shoes) ? shoes : SizeSystem::unknown;
}

SizeSystem unmistakable(const NumberSet& set) {
  const bool has_zero = set.double_zero || set.min == 0;
  if (has_zero && on_grid(set, SizeSystem::us)) return SizeSystem::us;
  const bool low_start = set.min >= 300 && set.min <= 320 && set.max >= 380;
  return low_start && on_grid(set, SizeSystem::eu) ? SizeSystem::eu : SizeSystem::unknown;
}

}  // namespace

void NumberSet::add(int tenths) {
  min = std::min(min, tenths);
  max = std::max(max, tenths);
  if (tenths < 0) {
    double_zero = true;
  } else if (tenths % 10 != 0) {
    halves = true;
  } else {
    (tenths % 20 == 0 ? even : odd) = true;
  }
}

SizeSystem system_of_numbers(const NumberSet& set, SizeSystem stated, bool marked) {
  if (set.empty()) return SizeSystem::unknown;
  if (on_grid(set, stated)) return stated;
  if (is_footwear(stated)) return SizeSystem::unknown;
  if (set.halves || (set.odd && set.even)) return single_steps(set, stated, marked);
  return marked ? SizeSystem::unknown : unmistakable(set);
}

int step_of(SizeSystem system) {
  const auto grid = grid_of(system);
  return grid ? grid->step : 0;
}

}  // namespace rangebook
