// The words that say in which form, where to and how figures are written.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "tracker/app/commands.h"

namespace rangebook {

/// `--format` with one of `formats`, `--out`; `--bom` where there is CSV; where there are forms for
/// people, `--locale`, `--words`, and the form `words`.
void add_output(CLI::App& sub, std::vector<std::string> formats, OutputChoice& output);

}  // namespace rangebook
