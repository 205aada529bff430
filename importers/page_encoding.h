// The character encoding of a saved page, and its text in UTF-8.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace rangebook {

/// A page as UTF-8 text. A page that is in UTF-8 already is not checked, its bytes stay.
struct PageText {
  std::string_view text;  ///< a view into the document; empty where it was converted
  std::string encoding;   ///< `UTF-8`, `windows-1252`, ..
  std::string converted;  ///< the text, where the document is not in UTF-8
};

/// Decides by byte order mark, else by the shape of UTF-16, else by what the page declares in its
/// first 4096 bytes (`iso-8859-1` and `us-ascii` mean windows-1252, as in every browser), else
/// UTF-8 where the whole page is, else windows-1252. `declared` is the page's own
/// statement.
std::string find_encoding(std::string_view document, std::optional<std::string> declared);

/// The text of a page without its byte order mark; nothing when the encoding is not known.
std::optional<PageText> decode_page(std::string_view document, std::string_view encoding);

/// How many bytes `text` takes in `encoding`: leads from an offset in the text back to the
/// document. Exact unless characters were lost in the conversion.
std::uint64_t encoded_size(std::string_view text, const std::string& encoding);

/// The bytes of the byte order mark the document begins with.
std::size_t byte_order_mark(std::string_view document);

}  // namespace rangebook
