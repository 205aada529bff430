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

/// Canonical text, equal for equal compositions: `65% cotton 35% polyester; lining: 100% viscose`.
std::string to_string(const Composition& composition);
std::string_view to_string(FibreOrigin origin);  ///< `natural`
std::optional<FibreOrigin> parse_fibre_origin(std::string_view name);

}  // namespace rangebook
