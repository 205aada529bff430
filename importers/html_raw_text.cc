// Comments and raw text of HTML.
#include "importers/html_raw_text.h"

#include <cstring>

#include "importers/html_tag.h"

namespace rangebook {
namespace {

bool begins_with(const char* at, const char* end, std::string_view text) {
  return static_cast<std::size_t>(end - at) >= text.size() &&
         std::memcmp(at, text.data(), text.size()) == 0;
}

bool ends_tag_name(char c) { return is_html_space(c) || c == '/' || c == '>'; }

// True when a tag name equal to `name` and its end stand at `at`.
bool is_tag_name(const char* at, const char* end, std::string_view name) {
  return static_cast<std::size_t>(end - at) > name.size() &&
         equals_ignoring_case({at, name.size()}, name) && ends_tag_name(at[name.size()]);
}

// The text stops at `close`, the "<" of the closing tag of `name`. Without the ">" of that tag the
// document ends inside it.
RawText closed_at(const char* close, const char* end, std::string_view name) {
  const char* const tag_end = find_tag_end(close + 2 + name.size(), end);
  return {close, tag_end == end ? end : tag_end + 1};
}

// True when `at` closes "<!--", whose two dashes may be its own; `opened` points behind them.
bool ends_escape(const char* opened, const char* at) {
  return at - opened >= 0 && at[-1] == '-' && at[-2] == '-';
}

enum class Script { plain, escaped, double_escaped };

}  // namespace

const char* skip_comment(const char* at, const char* end) {
  const char* const text = at + 4;
  for (const char* p = text; (p = find_any<'>'>(p, end)) != end; ++p) {
    if (p[-1] == '-' && p[-2] == '-') return p + 1;  // also the abrupt ends
    if (p - text >= 3 && p[-1] == '!' && p[-2] == '-' && p[-3] == '-') return p + 1;
  }
  return end;
}

RawText raw_text(const char* at, const char* end, std::string_view name) {
  for (; (at = find_any<'<'>(at, end)) != end; ++at) {
    if (end - at > 2 && at[1] == '/' && is_tag_name(at + 2, end, name)) {
      return closed_at(at, end, name);
    }
  }
  return {end, end};
}

RawText script_text(const char* at, const char* end) {
  constexpr std::string_view kScript = "script";
  Script state = Script::plain;
  const char* opened = at;
  for (;; ++at) {
    at = state == Script::plain ? find_any<'<'>(at, end) : find_any<'<', '>'>(at, end);
    if (at == end) return {end, end};
    if (*at == '>') {
      if (ends_escape(opened, at)) state = Script::plain;
    } else if (begins_with(at, end, "</") && is_tag_name(at + 2, end, kScript)) {
      if (state != Script::double_escaped) return closed_at(at, end, kScript);
      state = Script::escaped;
      at += 2 + kScript.size();
    } else if (state == Script::plain && begins_with(at, end, "<!--")) {
      state = Script::escaped;
      opened = at + 4;
      at += 3;
    } else if (state == Script::escaped && is_tag_name(at + 1, end, kScript)) {
      state = Script::double_escaped;
      at += 1 + kScript.size();
    }
  }
}

}  // namespace rangebook
