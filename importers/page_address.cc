// Resolving references against the address of a page.
#include "importers/page_address.h"

#include <algorithm>

#include "importers/byte_search.h"

namespace rangebook {
namespace {

// Offset of the path within an absolute address.
std::size_t path_of(std::string_view base) {
  const auto authority = base.find("://");
  if (authority == base.npos) return base.find(':') + 1;
  return std::min(base.find_first_of("/?#", authority + 3), base.size());
}

std::string_view until(std::string_view text, std::string_view signs) {
  return text.substr(0, text.find_first_of(signs));
}

std::string_view folder_of(std::string_view base) {
  const std::size_t path = path_of(base);
  const std::string_view whole = until(base, "?#");
  const auto slash = whole.rfind('/');
  return slash == whole.npos || slash < path ? whole : whole.substr(0, slash + 1);
}

}  // namespace

bool is_absolute_address(std::string_view address) {
  const auto colon = address.find(':');
  if (colon == address.npos || colon == 0 || !is_ascii_letter(address.front())) return false;
  const auto scheme = address.substr(0, colon);
  return std::all_of(scheme.begin(), scheme.end(), [](char c) {
    return is_ascii_letter(c) || is_ascii_digit(c) || c == '+' || c == '-' || c == '.';
  });
}

std::string resolve_address(std::string_view reference, std::string_view base) {
  if (reference.empty() || is_absolute_address(reference) || !is_absolute_address(base)) {
    return std::string(reference);
  }
  std::string_view head;
  if (reference.starts_with("//")) {
    head = base.substr(0, base.find(':') + 1);
  } else if (reference.front() == '/') {
    head = base.substr(0, path_of(base));
  } else if (reference.front() == '?') {
    head = until(base, "?#");
  } else if (reference.front() == '#') {
    head = until(base, "#");
  } else {
    head = folder_of(base);
  }
  std::string address(head);
  const bool bare_host = reference.front() != '/' && reference.front() != '?' &&
                         reference.front() != '#' && head.size() == path_of(base) &&
                         !head.ends_with('/');
  if (bare_host) address += '/';
  return address.append(reference);
}

}  // namespace rangebook
