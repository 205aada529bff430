// The parts of a MIME document, such as a page saved as one file (MHTML, RFC 2557).
//
// The delimiter lines between parts are looked for here (RFC 2046, section 5.1.1), the header of
// each part is read by gmime. Rejected: letting gmime take the document apart as a whole. It spends
// seconds and gigabytes on a million headers or parts, and does not tell a document that breaks
// off.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "importers/record_source.h"

namespace rangebook {

/// Longer headers, of the document or of one part, are refused.
inline constexpr std::size_t kMaxMimeHeaderBytes = std::size_t{64} << 10U;
/// More parts than this are refused; a saved page has one for each picture, style and frame.
inline constexpr std::size_t kMaxMimeParts = 10'000;
/// Parts within parts are looked into so deep.
inline constexpr std::size_t kMaxMimeDepth = 16;

/// A part that holds something itself.
struct MimePart {
  std::string type;        ///< media type in lower case: `text/html`
  std::string charset;     ///< empty where not stated
  std::string encoding;    ///< of the transfer, in lower case; empty where not stated
  std::string id;          ///< Content-ID without `<` and `>`
  std::string location;    ///< Content-Location as written; empty where not stated
  std::string_view body;   ///< as encoded: a view into the document
  bool cut_short = false;  ///< the document ends within this part
};

struct MimeDocument {
  std::vector<MimePart> parts;  ///< in the order of the document
  std::string start;            ///< Content-ID of the part to begin with; empty where not stated
  std::string location;         ///< of the document as a whole; empty where not stated
};

/// Takes a document apart, or says why it is none. `document` must outlive the result.
std::variant<MimeDocument, DocumentFault> read_mime(std::string_view document);

}  // namespace rangebook
