// A policy as lines of text: from a plain text or from the visible blocks of an HTML page. Rows of
// a table come as one line, with the words of the header that give a bare number its meaning.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "importers/html_tree.h"

namespace rangebook {

enum class PolicyLineKind : std::uint8_t { heading, text, item, row };

struct PolicyLine {
  std::string text;        ///< one line, white space as single blanks
  std::uint32_t byte = 0;  ///< where it begins in the document
  PolicyLineKind kind = PolicyLineKind::text;
  std::string header;  ///< of a row: the table's header cells, joined
};

/// More lines than this are not read: no policy is that long.
inline constexpr std::size_t kMaxPolicyLines = 20'000;

/// The lines of a plain text. Lines that were broken at a fixed width are joined again.
std::vector<PolicyLine> lines_of_text(std::string_view text);

/// The lines of a page without its navigation, header, footer, scripts. Text that a click unfolds
/// is read too: policies often stand in such panels.
std::vector<PolicyLine> lines_of_page(const HtmlTree& tree);

}  // namespace rangebook
