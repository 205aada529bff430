// Stretches of HTML text in which "<" does not begin a tag: comments, and the content of script,
// style, title and their like. By the tokenizer of the WHATWG HTML standard.
#pragma once

#include <string_view>

namespace rangebook {

/// Content and what follows it.
struct RawText {
  const char* content_end = nullptr;  ///< where the content stops
  const char* after = nullptr;        ///< behind the closing tag; `end` when it is missing
};

/// `at` points at "<!--". Behind the end of the comment, by any of its ends ("-->", "--!>", and
/// the abrupt "<!-->" and "<!--->"); `end` when it is never closed.
const char* skip_comment(const char* at, const char* end);

/// The content that begins at `at` and is closed by "</name" and white space, "/" or ">"; `name` in
/// lower case. For title, textarea, style, xmp, iframe, noembed and noframes.
RawText raw_text(const char* at, const char* end, std::string_view name);

/// The content of a script element that begins at `at`. Inside "<!--" .. "-->" a "<script" hides
/// the next "</script" (the escaped and double-escaped states).
RawText script_text(const char* at, const char* end);

}  // namespace rangebook
