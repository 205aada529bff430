// Which part of a page saved as one file (MHTML) is the page.
#pragma once

#include "importers/mime_parts.h"

namespace rangebook {

bool is_html_part(const MimePart& part);

/// The part that the start parameter names, else the first HTML part with the address of the whole,
/// else the first HTML part; nullptr where there is none.
const MimePart* find_page_part(const MimeDocument& archive);

}  // namespace rangebook
