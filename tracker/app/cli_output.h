// The words that say how figures are written.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "tracker/app/commands.h"

namespace rangebook {

/// `--bom` where there is CSV, `--locale` where there are forms for people.
void add_output_style(CLI::App& sub, const std::vector<std::string>& formats, OutputChoice& output);

}  // namespace rangebook
