// Rules at the outermost level, one by one; what stands in braces within braces is passed over.
#include "importers/page_styles.h"

#include <algorithm>

#include "importers/html_tag.h"

namespace rangebook {
namespace {

constexpr std::size_t kLongestSheet = std::size_t{1} << 20U;
constexpr std::size_t kLongestRule = 2000;
constexpr std::size_t kMostClasses = 2000;

bool is_name_sign(char c) {
  return is_ascii_letter(c) || is_ascii_digit(c) || c == '-' || c == '_';
}

// Without spaces and in lower case, as declarations are compared.
std::string folded(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (!is_html_space(c)) out += ascii_lower(c);
  }
  return out;
}

// "span.old" or ".old": its class; empty for any other selector.
std::string_view only_class(std::string_view selector) {
  while (!selector.empty() && is_html_space(selector.front())) selector.remove_prefix(1);
  while (!selector.empty() && is_html_space(selector.back())) selector.remove_suffix(1);
  const auto dot = selector.find('.');
  if (dot == selector.npos) return {};
  const auto element = selector.substr(0, dot);
  const auto name = selector.substr(dot + 1);
  const bool plain = std::all_of(element.begin(), element.end(), is_name_sign) &&
                     std::all_of(name.begin(), name.end(), is_name_sign);
  return plain ? name : std::string_view{};
}

void read_rule(std::string_view selectors, std::string_view body, PageStyles& styles) {
  if (selectors.size() > kLongestRule || body.size() > kLongestRule) return;
  const std::string said = ";" + folded(body);
  const bool strikes = said.find(";text-decoration:line-through") != said.npos ||
                       said.find(";text-decoration-line:line-through") != said.npos;
  const bool hides =
      said.find(";display:none") != said.npos || said.find(";visibility:hidden") != said.npos;
  for (std::size_t from = 0; (strikes || hides) && from <= selectors.size();) {
    const auto end = std::min(selectors.find(',', from), selectors.size());
    const auto name = only_class(selectors.substr(from, end - from));
    if (!name.empty() && strikes && styles.struck.size() < kMostClasses) {
      styles.struck.emplace(name);
    }
    if (!name.empty() && hides && styles.undisplayed.size() < kMostClasses) {
      styles.undisplayed.emplace(name);
    }
    from = end + 1;
  }
}

std::string without_comments(std::string_view sheet) {
  std::string out;
  while (!sheet.empty()) {
    const auto open = std::min(sheet.find("/*"), sheet.size());
    out += sheet.substr(0, open);
    const auto close = sheet.find("*/", open);
    sheet = close == sheet.npos ? std::string_view{} : sheet.substr(close + 2);
  }
  return out;
}

}  // namespace

void read_styles(std::string_view sheet, PageStyles& styles) {
  const std::string text = without_comments(sheet.substr(0, kLongestSheet));
  const std::string_view all = text;
  std::size_t depth = 0;
  std::size_t from = 0;  // of the selectors, or of the body once it is open
  std::string_view selectors;
  for (std::size_t at = 0; at < all.size(); ++at) {
    if (all[at] == '{' && depth++ == 0) {
      selectors = all.substr(from, at - from);
      from = at + 1;
    } else if (all[at] == '}' && depth > 0 && --depth == 0) {
      const auto body = all.substr(from, at - from);
      if (body.find('{') == body.npos) read_rule(selectors, body, styles);
      from = at + 1;
    } else if (all[at] == ';' && depth == 0) {
      from = at + 1;  // behind "@import .."
    }
  }
}

}  // namespace rangebook
