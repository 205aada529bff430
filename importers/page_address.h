// Addresses on a page, made absolute where that is simple.
#pragma once

#include <string>
#include <string_view>

namespace rangebook {

/// `reference` as an absolute address (RFC 3986, section 5.2, without dot segments: those stay as
/// written). `base` is the absolute address of the page; without one the reference stays verbatim.
std::string resolve_address(std::string_view reference, std::string_view base);

/// True when the address names its scheme (`https:`).
bool is_absolute_address(std::string_view address);

}  // namespace rangebook
