// The words that say in which form, where to and how figures are written.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "tracker/app/commands.h"

namespace rangebook {

/// `--format` with one of `formats`, `--out`; `--bom` where there is CSV, `--locale` where there
/// are forms for people.
void add_output(CLI::App& sub, const std::vector<std::string>& formats, OutputChoice& output);

}  // namespace rangebook
