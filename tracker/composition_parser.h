// Reading fabric compositions as labels and pages write them.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "schema/composition.h"

namespace rangebook {

/// Longer texts are no composition and give nothing.
inline constexpr std::size_t kMaxCompositionBytes = 4096;
/// Further shares of a text are left out.
inline constexpr std::size_t kMaxFibreShares = 100;

/// Reads `65% Cotton, 35% Polyester`, `Cotton 65% Polyester 35%`, `Main: 100% viscose. Lining: 100%
/// polyester`, `100% wool, lining 100% viscose`, `100% viscose lining`, `CO 65 PES 35`.
///
/// - The share stands before or after its fibre; within a stretch without a comma or other stop the
///   first token tells which.
/// - Fibres get their Annex I name ("nylon" is polyamide, "linen" flax, "merino" wool); others are
///   kept verbatim. Equal fibres of a part add up.
/// - A part is named by a word before a colon, or a known word before or behind the shares. An
/// unknown
///   word before a colon names a part of its own.
/// - Numbers without a percent sign count only when all fibres are known and every part sums to
/// 100.
/// - Shares written apart from their fibres (`cotton/polyester 65%/35%`) give nothing.
///
/// Nothing when no share of any fibre can be read. Shares that do not sum to 100 are kept as read:
/// see CompositionPart::sums_to_100.
std::optional<Composition> parse_composition(std::string_view text);

}  // namespace rangebook
