// Sizes as a shop writes them, with what is known of their order. Systems are never converted
// into each other: published conversion charts contradict each other.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// The scheme a label belongs to. `unknown` labels are kept verbatim, compared as a set and never
/// ranked.
enum class SizeSystem : std::uint8_t {
  unknown,
  alpha,  ///< XXS .. 6XL, and dual forms such as S/M
  uk,     ///< UK women's numeric 4, 6, .. 36
  au,     ///< Australian women's numeric
  us,     ///< US women's numeric 00, 0, 2, .. ; 14W, 1X are `us` or `alpha` in fit range plus
  eu,     ///< German/Scandinavian style 32, 34, .. 60
  fr,     ///< French and Spanish numeric
  it,     ///< Italian numeric
  jp,     ///< Japanese numeric 5, 7, 9, ..
  waist_length,  ///< inches: W30 L32
  bra,           ///< band in inches and cup: 34DD
  bra_eu,        ///< band in centimetres and cup, EN 13402: 85D
  bra_au,        ///< dress size and cup: 12DD
  footwear_uk,
  footwear_eu,
  footwear_us,
  one_size,
};

/// The body the size is cut for, beside its number.
enum class FitRange : std::uint8_t { regular, petite, tall, plus, maternity };

/// Position within one system and fit range. Only sizes of the same system and fit compare.
struct Size {
  std::string label;  ///< verbatim as captured
  SizeSystem system = SizeSystem::unknown;
  FitRange fit = FitRange::regular;
  /// Order key, larger is larger; dual sizes (12-14, S/M) carry the span. Numbers count in tenths
  /// (`38.5` is 385, US `00` is -10), letters from M = 0 in steps of 10. Sizes of two measures
  /// count by the first, then the second: waist and leg length, band and cup. Zero for unknown.
  std::int32_t low = 0;
  std::int32_t high = 0;

  bool ranked() const { return system != SizeSystem::unknown; }
  auto operator<=>(const Size&) const = default;
};

std::string_view to_string(SizeSystem system);  ///< `uk`, `waist-length`
std::string_view to_string(FitRange fit);       ///< `regular`, `petite`
std::optional<SizeSystem> parse_size_system(std::string_view name);
std::optional<FitRange> parse_fit_range(std::string_view name);

}  // namespace rangebook
