// The script of the page that takes documents: files and folders dropped on it, and how much of
// them is sent. Without it the form does all the same.
#pragma once

#include <string_view>

namespace rangebook {

std::string_view drop_script();

}  // namespace rangebook
