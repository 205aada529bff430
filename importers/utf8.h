// Checking text before it is trusted: UTF-8 validity and NUL bytes.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

/// Offset of the first byte that is not part of valid UTF-8 (RFC 3629: no overlong forms, no
/// surrogates, nothing above U+10FFFF) or that is NUL. Nothing when the text is clean.
std::optional<std::size_t> first_bad_byte(std::string_view text);

/// True when every byte is ASCII and none is NUL. Much faster than the full check.
bool is_plain_ascii(std::string_view text);

/// At most `max_bytes` of the text, cut between characters, for showing in a message.
std::string excerpt_of(std::string_view text, std::size_t max_bytes);

}  // namespace rangebook
