// Keys for comparing addresses and names.
#include "tracker/link_keys.h"

#include <algorithm>

#include "tracker/text_fold.h"

namespace rangebook {
namespace {

constexpr std::string_view kNoBreakSpace = "\xC2\xA0";

std::string_view without_scheme(std::string_view url) {
  const std::size_t at = url.find("://");
  if (at != std::string_view::npos) return url.substr(at + 3);
  return url.starts_with("//") ? url.substr(2) : url;
}

std::string host_key(std::string_view host) {
  std::string key(host);
  std::transform(key.begin(), key.end(), key.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  for (const std::string_view port : {":80", ":443"}) {
    if (key.ends_with(port)) key.resize(key.size() - port.size());
  }
  if (key.starts_with("www.")) key.erase(0, 4);
  return key;
}

/// Bytes of the space that `text` starts with; 0 if it starts with none.
std::size_t leading_space(std::string_view text) {
  if (text.starts_with(kNoBreakSpace)) return kNoBreakSpace.size();
  return text.front() == ' ' || (text.front() >= '\t' && text.front() <= '\r') ? 1 : 0;
}

}  // namespace

std::string address_key(std::string_view url) {
  std::string_view rest = without_scheme(trim_text(url));
  rest = rest.substr(0, std::min(rest.find_first_of("?#"), rest.size()));
  const std::size_t slash = std::min(rest.find('/'), rest.size());
  std::string_view path = rest.substr(slash);
  while (path.ends_with('/')) path.remove_suffix(1);
  if (path.empty()) return {};
  return host_key(rest.substr(0, slash)).append(path);
}

std::string_view address_query(std::string_view url) {
  url = trim_text(url);
  url = url.substr(0, std::min(url.find('#'), url.size()));
  const std::size_t mark = url.find('?');
  return mark == std::string_view::npos ? std::string_view() : url.substr(mark + 1);
}

std::string space_folded(std::string_view text) {
  text = trim_text(text);
  std::string folded;
  folded.reserve(text.size());
  while (!text.empty()) {
    const std::size_t space = leading_space(text);
    if (space == 0) {
      folded += text.front();
    } else if (!folded.ends_with(' ')) {
      folded += ' ';
    }
    text.remove_prefix(std::max<std::size_t>(space, 1));
  }
  return folded;
}

}  // namespace rangebook
