// The script of the desk: it makes keys of buttons. Without it every page does all the same.
#pragma once

#include <string_view>

namespace rangebook {

std::string_view desk_script();

}  // namespace rangebook
