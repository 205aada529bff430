// Terms as a text a person edits: one field a line, `return.window = 28 days from delivery`.
// Lines that are empty or start with `#` say nothing. Not stated: leave the line out.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/terms_fields.h"

namespace rangebook {

/// Larger texts are refused.
inline constexpr std::size_t kMaxTermsForm = std::size_t{1} << 20U;

/// `shop`, `observed`, then every stated field in the order of `stated_values`. Reading it again
/// gives equal terms; evidence is not part of it.
std::string terms_text(const Terms& terms);

struct ReadTermsText {
  Terms terms;                     ///< from the lines that are good
  std::vector<TermsFault> faults;  ///< in the order of lines
};

/// Reads a text form. A field given twice with different values is a fault, and the first stays.
/// `home` is the currency of an amount that names none.
ReadTermsText read_terms_text(std::string_view text, std::optional<Currency> home = {});

}  // namespace rangebook
