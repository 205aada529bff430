// Canonical text of compositions.
#include "schema/composition.h"

#include <fmt/format.h>

#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<FibreOrigin, 4> kOriginNames{{
    {FibreOrigin::natural, "natural"},
    {FibreOrigin::regenerated, "regenerated"},
    {FibreOrigin::synthetic, "synthetic"},
    {FibreOrigin::other, "other"},
}};

constexpr std::int32_t kWhole = 10000;

/// `65`, `2.5`, `33.33`
std::string share_text(std::int32_t hundredths) {
  const auto whole = hundredths / 100;
  const auto rest = hundredths % 100;
  if (rest == 0) return fmt::format("{}", whole);
  if (rest % 10 == 0) return fmt::format("{}.{}", whole, rest / 10);
  return fmt::format("{}.{:02}", whole, rest);
}

}  // namespace

bool CompositionPart::sums_to_100() const {
  std::int64_t sum = 0;
  for (const auto& share : fibres) sum += share.hundredths;
  return sum == kWhole;
}

OriginShares shares_by_origin(const CompositionPart& part) {
  OriginShares shares;
  for (const auto& share : part.fibres) {
    switch (share.origin) {
      case FibreOrigin::natural:
        shares.natural += share.hundredths;
        break;
      case FibreOrigin::regenerated:
        shares.regenerated += share.hundredths;
        break;
      case FibreOrigin::synthetic:
        shares.synthetic += share.hundredths;
        break;
      case FibreOrigin::other:
        shares.other += share.hundredths;
        break;
    }
  }
  return shares;
}

std::string to_string(const Composition& composition) {
  std::string text;
  for (const auto& part : composition.parts) {
    if (!text.empty()) text += "; ";
    if (part.part != kMainPart) text += part.part + ": ";
    bool first = true;
    for (const auto& share : part.fibres) {
      if (!first) text += ' ';
      first = false;
      text += fmt::format("{}% {}", share_text(share.hundredths), share.fibre);
    }
  }
  return text;
}

std::string_view to_string(FibreOrigin origin) { return name_of(kOriginNames, origin); }
std::optional<FibreOrigin> parse_fibre_origin(std::string_view name) {
  return value_of(kOriginNames, name);
}

}  // namespace rangebook
