// Cutting a size cell into the labels and ranges it lists.
#pragma once

#include <string_view>
#include <vector>

namespace rangebook {

/// The parts of a cell, trimmed, none empty; see expand_sizes for what separates them. Views into
/// `cell`.
std::vector<std::string_view> split_size_list(std::string_view cell);

}  // namespace rangebook
