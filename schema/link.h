// Links: which line of one snapshot is which line of the other, and why.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

enum class LinkEvidence : std::uint8_t { line_code, gtin, group_id, address, likeness };
std::string_view to_string(LinkEvidence evidence);  ///< `line-code`

/// Who said so. A stylist's decision wins over every rule.
enum class LinkAuthority : std::uint8_t { code, rule, stylist };
std::string_view to_string(LinkAuthority authority);

struct Link {
  std::size_t from = 0;                ///< index into the lines of the earlier snapshot
  std::size_t to = 0;                  ///< index into the lines of the later snapshot
  std::vector<LinkEvidence> evidence;  ///< strongest first, never empty for authority code
  LinkAuthority authority = LinkAuthority::code;
  double score = 1.0;    ///< 0..1; 1 for exact evidence
  std::string sentence;  ///< the reason, readable

  bool operator==(const Link&) const = default;
};

/// A one-to-one assignment: each line stands in at most one link. Everything else is listed, so
/// links + only_from = lines then, links + only_to = lines now.
struct LinkSet {
  std::vector<Link> links;             ///< ordered by `from`
  std::vector<std::size_t> only_from;  ///< ascending
  std::vector<std::size_t> only_to;    ///< ascending
  /// Pairs of lines out of both lists that wait for the stylist's yes or no, best first; no line
  /// stands in two. They are not linked.
  std::vector<Link> ask = {};
};

}  // namespace rangebook
