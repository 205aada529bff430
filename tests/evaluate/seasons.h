// Seasons of an invented shop: what stays, goes and comes, and how much of it changes at once.
#pragma once

#include <cstdint>
#include <string>

#include "tests/evaluate/habits.h"

namespace rangebook::evaluate {

enum class Level { easy, middle, hard };

/// One pair of captures to make. Equal values make equal pairs.
struct Task {
  std::string generator;
  Level level = Level::middle;
  std::uint64_t seed = 1;
  int lines = 300;  ///< of the earlier capture, about
};

std::unique_ptr<Habits> habits_of(const Task& task);

/// Odd seeds re-code the whole range from the middle level on; every third seed has a later capture
/// that looked at some categories only. Names with codes are unique in each capture.
Seasons make_seasons(const Task& task);

/// The same seasons as name, description and price: one line a row, nothing else known.
Seasons names_only(const Seasons& seasons);

}  // namespace rangebook::evaluate
