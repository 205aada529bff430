// Which numbers a size system has, and which system a set of numbers can belong to.
//
// Sources: the grids are common practice, no source (EN 13402-3 defines body measures, not these
// numbers). They only say what a label may mean; nothing is ever converted.
#pragma once

#include <algorithm>
#include <limits>

#include "schema/size.h"

namespace rangebook {

/// What is known of all numbers that carry the same mark (or none) in one set of labels.
/// Values are in tenths, as in Size::low.
struct NumberSet {
  int min = std::numeric_limits<int>::max();
  int max = std::numeric_limits<int>::min();
  bool halves = false;  ///< 38.5
  bool odd = false;
  bool even = false;
  bool double_zero = false;  ///< 00, 000

  void add(int tenths);
  bool empty() const { return min > max; }
};

/// The system the numbers of `set` are in, `stated` being the shop's default or, with `marked`,
/// what the labels themselves say:
/// - all on the stated system's grid: the stated system;
/// - half sizes, or odd numbers among even ones where the grid has only one kind: no garment set;
///   shoes or waists in inches, by the range of the numbers;
/// - otherwise, for bare numbers, a system that no other one can be mistaken for (`0` is US; 30 or
///   32 together with 38 or more is EU);
/// - otherwise unknown. Small even numbers without a stated system can be UK, AU or US: unknown.
SizeSystem system_of_numbers(const NumberSet& set, SizeSystem stated, bool marked);

/// Distance of neighbouring sizes in tenths; 0 for systems that are no plain numbers.
int step_of(SizeSystem system);

}  // namespace rangebook
