// Any text on one line of a file of ours, and back.
#pragma once

#include <string>
#include <string_view>

namespace rangebook {

/// Line ends and backslashes are written `\n`, `\\`.
std::string on_one_line(std::string_view text);
std::string off_one_line(std::string_view line);

}  // namespace rangebook
