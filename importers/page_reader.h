// Saved HTML pages as a row reader: the schema.org product facts in their JSON-LD.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "importers/row_reader.h"

namespace rangebook {

/// Larger documents are refused. The page and its JSON-LD are held in memory, nothing else.
inline constexpr std::size_t kMaxPageBytes = std::size_t{256} << 20U;

/// What is known of a page from outside of it.
struct PageOrigin {
  std::string address;       ///< where it was saved from; empty if not known
  std::string charset;       ///< stated beside the page, decides before what it states itself
  bool web_archive = false;  ///< saved as one file, from which browsers leave out the scripts
};

/// Opens a saved page. Rows come from all JSON-LD blocks, one for each variant and offer, in the
/// order of the page; a block that is no JSON becomes a rejection and the others still count. A
/// page without product markup, a page that is no HTML and one that is too large give one
/// rejection that says so. What a web archive lost with its scripts is said once. `html` must
/// outlive the reader.
std::unique_ptr<RowReader> open_page(std::string_view html, std::uint32_t document_index,
                                     PageOrigin origin = {});

/// True when a document begins like an HTML page, by the tags of the WHATWG MIME sniffing
/// standard, also in UTF-16 or behind an XML declaration. For choosing an importer; a few hundred
/// bytes are enough.
bool looks_like_page(std::string_view first_bytes);

}  // namespace rangebook
