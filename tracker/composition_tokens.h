// Cutting a composition text into shares, phrases and the signs between them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "tracker/fibre_table.h"

namespace rangebook {

struct CompositionToken {
  enum class Type : std::uint8_t {
    share,   ///< 65 %
    phrase,  ///< words with no other token between them
    stop,    ///< , ; . / | and line ends
    colon,
  };
  Type type = Type::stop;
  std::int32_t hundredths = 0;   ///< of a share
  std::vector<FibreWord> words;  ///< of a phrase
};

/// Whether numbers need their percent sign: `CO 65 PES 35` has none.
enum class ShareStyle : std::uint8_t { percent, bare };

/// The tokens of `text`, into which their words point. Brackets, dashes and quotes only part words.
/// Shares above 100 % and, with ShareStyle::percent, bare numbers are words.
std::vector<CompositionToken> composition_tokens(std::string_view text, ShareStyle style);

/// True when the text has a percent sign or word.
bool has_percent(std::string_view text);

}  // namespace rangebook
