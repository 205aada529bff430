// The words of attributes and the cues around them, indexed for look-up
// (schema/tables/attributes.tsv, attribute_cues.tsv).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "schema/attributes.h"

namespace rangebook {

enum class AttributeCue : std::uint8_t {
  negation,
  negation_behind,
  negation_suffix,
  instead,
  or_word,
  elsewhere,
  ignore,
};

/// What a stretch of words means: a value or a cue.
struct AttributeTerm {
  std::optional<AttributeCue> cue;
  Attribute attribute = Attribute::sleeve_length;  ///< of a value
  std::string_view value;
  bool general = false;    ///< gives way to any other value of its attribute
  std::size_t length = 0;  ///< words
};

using FoldedWords = std::span<const std::string_view>;

/// The longest term that the first words are; values before cues where both are as long.
std::optional<AttributeTerm> term_at_start(FoldedWords words);
/// The value that exactly these words are.
std::optional<AttributeTerm> value_term(FoldedWords words);

}  // namespace rangebook
