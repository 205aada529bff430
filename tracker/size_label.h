// Reading one size label on its own, before the rest of the set says what its numbers mean.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "schema/size.h"

namespace rangebook {

inline constexpr std::size_t kMaxSizeLabelBytes = 100;

enum class SizeShape : std::uint8_t {
  unknown,
  number,      ///< 12, UK 12, 12 Petite, 38.5
  dash_pair,   ///< 12-14: a dual size
  slash_pair,  ///< 12/14 or 30/32: a dual size or waist and length, as the set says
  w_number,    ///< 14W: US plus, or a waist, as the set says
  alpha,       ///< S, 2XL, S/M, X-Large; 1X with fit plus
  waist,       ///< W30, W30 L32
  bra,         ///< 34DD, 85D, 12DD; `mark` holds the system
  one_size,
};

/// Numbers are in tenths and letters in steps of ten, as in Size::low.
struct SizeReading {
  SizeShape shape = SizeShape::unknown;
  std::optional<SizeSystem> mark;  ///< what the label itself says: UK, EU, ..
  FitRange fit = FitRange::regular;
  int low = 0;
  int high = 0;    ///< differs from low for pairs
  int second = 0;  ///< leg length in tenths of an inch, or the cup's place in its alphabet
};

/// Reads any label; `unknown` when it is no form of a size. `preferred` chooses among several
/// names of one size (`UK 12 / EU 40`): the one in that system, else the first.
SizeReading read_size_label(std::string_view label, SizeSystem preferred);

}  // namespace rangebook
