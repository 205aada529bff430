// Figures as they are said aloud, so that what is spoken in a recording is what was captured.
#pragma once

#include <string>
#include <string_view>

namespace rangebook {

/// A figure of a report in its plain form (reports/wording.h), in British English: `£79.90` is
/// `seventy-nine pounds ninety`, `12.5%` `twelve point five per cent`, `UK 6–24` `UK six to
/// twenty-four`, `2 September 2026` `the second of September twenty twenty-six`. Letters and codes
/// with digits in them stay as they are.
std::string spoken_words(std::string_view figure);

}  // namespace rangebook
