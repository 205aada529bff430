// What a document is, from its first bytes: names of files lie too often.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace rangebook {

enum class DocumentKind : std::uint8_t {
  text,  ///< a table of text, as far as the first bytes tell
  page,  ///< HTML
  mail,  ///< MIME headers: MHTML
  json,
  xml,
  zip,           ///< an XLSX workbook or an archive of documents
  old_workbook,  ///< OLE container: .xls, or a workbook with a password
  pdf,
  picture,
  other,  ///< binary of another kind
};

/// Looks at no more than kKindBytes. UTF-16 counts as text; JSON and XML in it as text too.
DocumentKind kind_of(std::string_view head);
inline constexpr std::size_t kKindBytes = 4096;

/// What the kind is called in a message: `a picture`.
std::string_view spoken(DocumentKind kind);

}  // namespace rangebook
