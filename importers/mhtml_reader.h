// A page saved as one file (MHTML, RFC 2557): the page itself is found among its parts, decoded and
// read like any saved page (importers/page_reader.h).
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string_view>

#include "importers/row_reader.h"

namespace rangebook {

/// Larger files are refused. The file and the decoded page are held in memory.
inline constexpr std::size_t kMaxMhtmlBytes = std::size_t{256} << 20U;

/// Opens a web archive. The page is the part that the start parameter names, else the first HTML
/// part with the address of the whole, else the first HTML part; frames, styles and pictures are
/// left aside. Rows and rejections stand where the line of the file begins that they came from.
/// Missing scripts, a file that breaks off within the page and damaged encoded text are each said
/// once; a file without a page gives one rejection. `document` must outlive the reader.
std::unique_ptr<RowReader> open_mhtml(std::string_view document, std::uint32_t document_index);

}  // namespace rangebook
