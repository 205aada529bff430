// What the lines of two captures are made of, as far as they state it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace rangebook {

/// Mean shares over the lines that state a main part adding up to 100 %, in tenths of a percent.
struct FibreRow {
  std::string name;        ///< of the fibre, or of an origin (`synthetic`)
  bool is_origin = false;  ///< a sum of fibres, not one more of them
  std::uint32_t then = 0;
  std::uint32_t now = 0;
  bool operator==(const FibreRow&) const = default;
};

/// Origins first, then fibres, largest share first.
struct FibrePair {
  std::uint32_t lines_then = 0;
  std::uint32_t lines_now = 0;
  std::uint32_t stated_then = 0;  ///< of them, lines that are in the shares
  std::uint32_t stated_now = 0;
  std::vector<FibreRow> rows;
  bool operator==(const FibrePair&) const = default;
};

}  // namespace rangebook
