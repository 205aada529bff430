// Keys by which the linker compares lines: what is left of an address or a name when the parts that
// change without meaning are taken off.
#pragma once

#include <string>
#include <string_view>

namespace rangebook {

/// What of an address identifies a page: host in lower case without `www.` and default port, and
/// the path without its trailing slash. Scheme, query and fragment are left out, since links for
/// campaigns and searches add them. Empty when no path is left: a home page identifies no line.
std::string address_key(std::string_view url);

/// The query of an address, without `?`; empty if it has none.
std::string_view address_query(std::string_view url);

/// Trimmed, and each run of spaces as one plain space. Case is kept.
std::string space_folded(std::string_view text);

}  // namespace rangebook
