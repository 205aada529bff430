// The words of `rangebook picks` and `rangebook due`.
#pragma once

#include "tracker/app/cli_terms.h"

namespace rangebook {

/// Adds `picks` with its verbs, and `due`.
void add_pick_commands(CLI::App& app, const CliContext& context);

}  // namespace rangebook
