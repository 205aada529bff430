// What a garment is made of: parts, fibres by the names of Regulation (EU) 1007/2011, shares.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

enum class FibreOrigin : std::uint8_t { natural, regenerated, synthetic, other };

/// One fibre of a part. `hundredths` is the share in 1/100 percent (6500 = 65 %).
struct FibreShare {
  std::string fibre;   ///< Annex I name in lower case, or the verbatim words if not known
  bool known = false;  ///< the name stands in schema/tables/fibres.tsv
  FibreOrigin origin = FibreOrigin::other;
  std::int32_t hundredths = 0;
  std::int32_t recycled = 0;  ///< of these, what the text calls recycled
  std::int32_t organic = 0;   ///< likewise organic; a claim of the shop, not a finding

  auto operator<=>(const FibreShare&) const = default;
};

inline constexpr std::string_view kMainPart = "main";

struct CompositionPart {
  std::string part;                ///< `main` unless the text names one: lining, trim, body, ..
  std::vector<FibreShare> fibres;  ///< largest share first, then by name

  bool sums_to_100() const;
  auto operator<=>(const CompositionPart&) const = default;
};

/// Parts with at least one fibre, `main` first, the others by name; each name once.
struct Composition {
  std::vector<CompositionPart> parts;

  auto operator<=>(const Composition&) const = default;
};

/// How much of a part each kind of fibre makes up, in 1/100 percent.
struct OriginShares {
  std::int32_t natural = 0;
  std::int32_t regenerated = 0;
  std::int32_t synthetic = 0;
  std::int32_t other = 0;  ///< also fibres that are not known
  bool operator==(const OriginShares&) const = default;
};
OriginShares shares_by_origin(const CompositionPart& part);

/// Canonical text, equal for equal fibres: `65% cotton 35% polyester; lining: 100% viscose`. What
/// is recycled or organic does not stand in it.
std::string to_string(const Composition& composition);
std::string_view to_string(FibreOrigin origin);  ///< `natural`
std::optional<FibreOrigin> parse_fibre_origin(std::string_view name);

}  // namespace rangebook
