// Finds the JSON-LD blocks of an HTML page, and the few facts of its head, without a tree. The
// tags in between are stepped over by the tokenizer rules of the WHATWG HTML standard, so a
// "<script" inside a comment, a style, a title or an attribute is none.
//
// Followed: comments with all their ends, script data with its escaped states, raw text elements,
// quoted and unquoted attributes, SVG and MathML, template (its content is inert and left out).
// Not followed, since they need the tree: tags that a parser ignores inside select or frameset.
// noscript is read as markup, as by a reader that runs no scripts.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// The content of one `<script type="application/ld+json">`.
struct ScriptBlock {
  std::string_view text;   ///< a view into the page
  std::uint64_t byte = 0;  ///< offset of the text in the page, from 0
  std::uint64_t line = 1;  ///< line of the page on which the text begins, from 1
  bool closed = true;      ///< false when the page ends inside
};

/// What the scan found. Texts have their character references replaced; each is the first of its
/// kind on the page, and absent when there is none.
struct PageScan {
  std::vector<ScriptBlock> json_ld;
  std::size_t scripts = 0;  ///< all script elements, of any type
  std::optional<std::string> title;
  std::optional<std::string> language;   ///< `<html lang>`
  std::optional<std::string> canonical;  ///< `<link rel=canonical href>`
  std::optional<std::string> base;       ///< `<base href>`
  std::optional<std::string> og_url;     ///< `<meta property="og:url" content>`
  std::optional<std::string> charset;    ///< `<meta charset>` or the one in a content type
};

/// Scans a page in an encoding in which ASCII bytes mean ASCII (UTF-8, windows-1252, ..). Never
/// fails; a page without any markup yields nothing. `page` must outlive the blocks.
PageScan scan_page(std::string_view page);

/// The lines of `text` before its end: the number of line feeds.
std::uint64_t count_lines(std::string_view text);

}  // namespace rangebook
