// What waits for the stylist's yes or no, and what she decided, for reading and for other programs.
#pragma once

#include <string>

#include "schema/link_case.h"

namespace rangebook {

/// Which part of a list to show.
enum class LinkPart : std::uint8_t { waiting, decided };

/// Each pair with both lines below each other, its reference in front and the reason below; the
/// commands to settle them at the end.
std::string links_text(const LinkList& list, LinkPart part);

/// `rangebook.links/1`, both parts; see schema/FORMAT.md.
std::string links_json(const LinkList& list);

/// One row a pair, both parts, safe to open in a spreadsheet.
std::string links_csv(const LinkList& list);

/// `AB1 "Maya Dress" (AW25)` as it stands in sentences.
std::string line_phrase(const LineGlimpse& line);

}  // namespace rangebook
