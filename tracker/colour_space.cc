// Transfer curve and matrix of IEC 61966-2-1; CIELAB by CIE 15; CIEDE2000 in the order of the
// symbols of Sharma, Wu & Dalal 2005.
#include "tracker/colour_space.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rangebook {
namespace {

constexpr double kTurn = 360.0;

double radians(double degrees) { return degrees * std::numbers::pi / 180.0; }
double degrees(double radian) { return radian * 180.0 / std::numbers::pi; }
double cos_of(double angle) { return std::cos(radians(angle)); }
double square(double x) { return x * x; }

double linear(std::uint8_t channel) {
  const double part = channel / 255.0;
  return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
}

/// The cube root with its straight start, which keeps near-blacks apart.
double lab_curve(double part) {
  constexpr double kEdge = 6.0 / 29.0;
  if (part > kEdge * kEdge * kEdge) return std::cbrt(part);
  return part / (3 * kEdge * kEdge) + 4.0 / 29.0;
}

double hue_of(double a, double b) {
  if (a == 0 && b == 0) return 0;
  const double angle = degrees(std::atan2(b, a));
  return angle < 0 ? angle + kTurn : angle;
}

/// Near 0 for greys, near 1 for strong colours: both corrections for blue and grey use it.
double blue_share(double chroma) {
  const double seventh = std::pow(chroma, 7);
  return std::sqrt(seventh / (seventh + std::pow(25.0, 7)));
}

/// Hue step the short way round, from -180 to 180 degrees; none beside a grey.
double hue_step(const Lch& one, const Lch& other) {
  if (one.chroma * other.chroma == 0) return 0;
  const double step = other.hue - one.hue;
  if (step > kTurn / 2) return step - kTurn;
  return step < -kTurn / 2 ? step + kTurn : step;
}

double mean_hue(const Lch& one, const Lch& other) {
  const double sum = one.hue + other.hue;
  if (one.chroma * other.chroma == 0) return sum;
  if (std::abs(one.hue - other.hue) <= kTurn / 2) return sum / 2;
  return sum < kTurn ? (sum + kTurn) / 2 : (sum - kTurn) / 2;
}

/// Both colours with a* stretched for greys, as the formula measures chroma and hue.
Lch stretched(const Lab& lab, double factor) {
  const double a = lab.a * factor;
  return {lab.lightness, std::hypot(a, lab.b), hue_of(a, lab.b)};
}

double hue_weight(double hue, double chroma) {
  const double t = 1 - 0.17 * cos_of(hue - 30) + 0.24 * cos_of(2 * hue) +
                   0.32 * cos_of(3 * hue + 6) - 0.20 * cos_of(4 * hue - 63);
  return 1 + 0.015 * chroma * t;
}

double rotation(double hue, double chroma) {
  const double turn = 30 * std::exp(-square((hue - 275) / 25));
  return -std::sin(radians(2 * turn)) * 2 * blue_share(chroma);
}

}  // namespace

Lab lab_of(Srgb colour) {
  const double r = linear(colour.red);
  const double g = linear(colour.green);
  const double b = linear(colour.blue);
  // Each row is divided by its sum, the white of the matrix.
  const double x = lab_curve((0.4124 * r + 0.3576 * g + 0.1805 * b) / (0.4124 + 0.3576 + 0.1805));
  const double y = lab_curve((0.2126 * r + 0.7152 * g + 0.0722 * b) / (0.2126 + 0.7152 + 0.0722));
  const double z = lab_curve((0.0193 * r + 0.1192 * g + 0.9505 * b) / (0.0193 + 0.1192 + 0.9505));
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

Lch lch_of(const Lab& lab) {
  return {lab.lightness, std::hypot(lab.a, lab.b), hue_of(lab.a, lab.b)};
}

double ciede2000(const Lab& one, const Lab& other) {
  const double mean_chroma = (std::hypot(one.a, one.b) + std::hypot(other.a, other.b)) / 2;
  const double factor = 1.5 - 0.5 * blue_share(mean_chroma);
  const Lch first = stretched(one, factor);
  const Lch second = stretched(other, factor);
  const double lightness = (first.lightness + second.lightness) / 2;
  const double chroma = (first.chroma + second.chroma) / 2;
  const double hue = mean_hue(first, second);
  const double off_middle = square(lightness - 50);
  const double dl =
      (second.lightness - first.lightness) / (1 + 0.015 * off_middle / std::sqrt(20 + off_middle));
  const double dc = (second.chroma - first.chroma) / (1 + 0.045 * chroma);
  const double arc =
      2 * std::sqrt(first.chroma * second.chroma) * std::sin(radians(hue_step(first, second) / 2));
  const double dh = arc / hue_weight(hue, chroma);
  const double sum = square(dl) + square(dc) + square(dh) + rotation(hue, chroma) * dc * dh;
  return std::sqrt(std::max(0.0, sum));
}

}  // namespace rangebook
