// Character references of HTML: `&amp;`, `&#8364;`, `&euro;`.
#pragma once

#include <string>
#include <string_view>

namespace rangebook {

/// `text` with its character references replaced, as in the text of an element. References that
/// do not exist stay as they are. The full table of the WHATWG HTML standard is known, with the
/// legacy names that need no ";".
std::string decode_text(std::string_view text);

/// The same in an attribute's value, where a legacy name without ";" is left alone before "=" or a
/// letter or digit (`?a=1&copy=2`).
std::string decode_attribute(std::string_view text);

/// Appends one code point as UTF-8; U+FFFD for what is none.
void append_utf8(std::string& out, char32_t code_point);

}  // namespace rangebook
