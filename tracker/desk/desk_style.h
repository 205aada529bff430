// What the desk adds to the style sheet of the reports: the bar, forms, two lines side by side.
#pragma once

#include <string_view>

namespace rangebook {

std::string_view desk_style();

}  // namespace rangebook
