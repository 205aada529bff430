// The start parameter, the address, the order of the parts.
#include "importers/mhtml_page.h"

#include <string_view>

namespace rangebook {

bool is_html_part(const MimePart& part) {
  return part.type == "text/html" || part.type == "application/xhtml+xml";
}

const MimePart* find_page_part(const MimeDocument& archive) {
  std::string_view start = archive.start;
  if (start.starts_with('<')) start.remove_prefix(1);
  if (start.ends_with('>')) start.remove_suffix(1);
  const MimePart* first = nullptr;
  const MimePart* named = nullptr;
  for (const auto& part : archive.parts) {
    if (!is_html_part(part)) continue;
    if (!start.empty() && part.id == start) return &part;
    if (first == nullptr) first = &part;
    const bool same = !archive.location.empty() && part.location == archive.location;
    if (named == nullptr && same) named = &part;
  }
  return named == nullptr ? first : named;
}

}  // namespace rangebook
