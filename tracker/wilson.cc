// The Wilson score interval.
#include "tracker/wilson.h"

#include <algorithm>
#include <cmath>

namespace rangebook {
namespace {

constexpr double kNormal = 1.959963984540054;  // 97.5% quantile of the standard normal distribution
constexpr double kMillion = 1e6;

std::uint32_t millionths(double share) {
  return static_cast<std::uint32_t>(std::llround(std::clamp(share, 0.0, 1.0) * kMillion));
}

}  // namespace

ShareInterval wilson_interval(std::uint32_t part, std::uint32_t whole) {
  if (whole == 0) return {0, millionths(1)};
  const double n = whole;
  const double share = part / n;
  const double squared = kNormal * kNormal;
  const double centre = share + squared / (2 * n);
  const double spread = kNormal * std::sqrt(share * (1 - share) / n + squared / (4 * n * n));
  const double scale = 1 + squared / n;
  ShareInterval interval{millionths((centre - spread) / scale),
                         millionths((centre + spread) / scale)};
  if (part == 0) interval.low = 0;  // exactly so; rounding would leave a trace
  if (part == whole) interval.high = millionths(1);
  return interval;
}

}  // namespace rangebook
