// The script of a page with long lists: filters and sorts them. Without it, or where scripts are
// off, the page says all the same: the first rows of a list, and the rest folded below them.
#pragma once

#include <string_view>

namespace rangebook {

std::string_view page_script();

/// For the Content-Security-Policy of the page: base64 of the script's SHA-256. No other script
/// runs.
std::string_view page_script_hash();

}  // namespace rangebook
