// Which character encoding a document is in, from its first bytes.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

struct TextEncoding {
  std::string name = "UTF-8";  ///< as ICU knows it
  std::size_t mark_bytes = 0;  ///< length of the byte order mark at the front

  bool is_utf8() const { return name == "UTF-8"; }
};

/// The encoding that a byte order mark or a pattern of zero bytes proves; nothing when the bytes
/// have neither, which is UTF-8 or one of the one-byte encodings.
std::optional<TextEncoding> proven_encoding(std::string_view head);

/// The likeliest encoding of text that is not UTF-8. Several encodings make text of any bytes;
/// among readings that are about as likely, `windows-1252` wins, which is what Western spreadsheets
/// write.
std::string guess_encoding(std::string_view sample);

/// ICU's name of an encoding the user names; nothing when there is no such encoding.
std::optional<std::string> encoding_named(std::string_view name);

/// Whether the bytes are no text in any encoding: control signs that no text holds.
bool is_binary(std::string_view sample);

}  // namespace rangebook
