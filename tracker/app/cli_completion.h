// Completion for shells, made from the commands themselves.
#pragma once

#include "tracker/app/cli_terms.h"

namespace rangebook {

/// Adds `completion`. All other commands have to be there already.
void add_completion_command(CLI::App& app, const CliContext& context);

}  // namespace rangebook
