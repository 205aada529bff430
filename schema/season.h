// Seasons by the trade's codes, and by any label the stylist prefers.
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

/// `SS26` is spring/summer 2026, `AW26` autumn/winter 2026 (common practice, no source).
/// Other labels are kept as they are and ordered by the dates of their captures.
struct Season {
  enum class Half { spring_summer, autumn_winter };
  std::string label;        ///< canonical code or the label verbatim
  std::optional<int> year;  ///< four digits
  std::optional<Half> half;

  bool operator==(const Season&) const = default;
};

}  // namespace rangebook
