// The manual page, made from the commands themselves.
#pragma once

#include "tracker/app/cli_terms.h"

namespace rangebook {

/// Adds `manual`. All other commands have to be there already.
void add_manual_command(CLI::App& app, const CliContext& context);

}  // namespace rangebook
