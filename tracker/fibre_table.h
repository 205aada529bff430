// Fibre names, label codes and garment parts, indexed for look-up (schema/tables/fibres.tsv,
// fibre_codes.tsv, composition_parts.tsv).
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "schema/composition.h"

namespace rangebook {

/// A word of a composition text.
struct FibreWord {
  std::string_view raw;    ///< as written
  std::string folded;      ///< for look-up, see fold_text
  bool bracketed = false;  ///< stands in brackets
};
using FibreWords = std::span<const FibreWord>;

struct Fibre {
  std::string_view name;
  FibreOrigin origin = FibreOrigin::other;
};

struct PartName {
  std::string_view name;
  bool trailing = false;  ///< may stand behind its fibres
};

/// The fibre the first words name ("organic cotton", "CO"), the longest name, and its length in
/// words. A code counts only in capitals.
std::optional<Fibre> fibre_at_start(FibreWords words, std::size_t& length);

/// The part the first words name, the longest name, and its length in words.
std::optional<PartName> part_at_start(FibreWords words, std::size_t& length);

}  // namespace rangebook
