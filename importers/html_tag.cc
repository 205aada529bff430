// Tag ends and attributes by the rules of the HTML tokenizer.
#include "importers/html_tag.h"

#include <algorithm>

namespace rangebook {
namespace {

// True when a "=" at `equals` follows the name of an attribute; `from` is where the last value or
// the tag's name ended. After white space, "/" or a value, "=" begins a name instead.
bool ends_a_name(const char* from, const char* equals) {
  const char* at = equals;
  while (at != from && is_html_space(at[-1])) --at;
  return at != from && at[-1] != '/';
}

const char* skip_value(const char* at, const char* end) {
  while (at != end && is_html_space(*at)) ++at;
  if (at == end) return end;
  if (*at != '"' && *at != '\'') return find_any<' ', '\n', '\t', '\r', '\f', '>'>(at, end);
  at = *at == '"' ? find_any<'"'>(at + 1, end) : find_any<'\''>(at + 1, end);
  return at == end ? end : at + 1;
}

}  // namespace

const char* find_tag_end(const char* at, const char* end) {
  const char* from = at;
  bool named = false;
  for (;;) {
    at = find_any<'=', '>'>(at, end);
    if (at == end || *at == '>') return at;
    if (named || ends_a_name(from, at)) {
      const bool double_quoted = end - at > 1 && at[1] == '"';
      at = double_quoted ? find_any<'"'>(at + 2, end) : skip_value(at + 1, end);
      if (double_quoted && at != end) ++at;
      from = at;
      named = false;
    } else {
      named = true;
      from = at++;
      // The "=" is the first letter of a name; it stays one until white space or "/" ends it.
      const char* stop = find_any<' ', '\n', '\t', '\r', '\f', '/', '=', '>'>(at, end);
      if (stop != end && *stop != '=') named = false;
      at = stop;
    }
  }
}

bool equals_ignoring_case(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return ascii_lower(x) == ascii_lower(y); });
}

std::optional<std::string_view> find_attribute(std::string_view inside, std::string_view name) {
  HtmlAttributes attributes(inside);
  while (const auto attribute = attributes.next()) {
    if (equals_ignoring_case(attribute->name, name)) return attribute->value;
  }
  return std::nullopt;
}

void HtmlAttributes::skip_space() {
  while (!rest_.empty() && is_html_space(rest_.front())) rest_.remove_prefix(1);
}

std::string_view HtmlAttributes::take_name() {
  std::size_t length = 1;  // a leading "=" belongs to the name
  while (length < rest_.size() && rest_[length] != '=' && rest_[length] != '/' &&
         !is_html_space(rest_[length])) {
    ++length;
  }
  const auto name = rest_.substr(0, length);
  rest_.remove_prefix(length);
  return name;
}

std::string_view HtmlAttributes::take_value() {
  skip_space();
  if (rest_.empty()) return {};
  const char* const begin = rest_.data();
  const char* const end = begin + rest_.size();
  const char* const after = skip_value(begin, end);
  rest_.remove_prefix(static_cast<std::size_t>(after - begin));
  if (*begin != '"' && *begin != '\'') return {begin, after};
  const bool closed = after - begin >= 2 && after[-1] == *begin;
  return {begin + 1, closed ? after - 1 : after};
}

std::optional<HtmlAttribute> HtmlAttributes::next() {
  while (!rest_.empty() && (is_html_space(rest_.front()) || rest_.front() == '/')) {
    rest_.remove_prefix(1);
  }
  if (rest_.empty()) return std::nullopt;
  HtmlAttribute attribute{.name = take_name(), .value = {}};
  skip_space();
  if (!rest_.empty() && rest_.front() == '=') {
    rest_.remove_prefix(1);
    attribute.value = take_value();
  }
  return attribute;
}

}  // namespace rangebook
