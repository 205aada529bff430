// The words of `rangebook fetch`.
#pragma once

#include "tracker/app/cli_terms.h"

namespace rangebook {

/// Adds `fetch`.
void add_fetch_command(CLI::App& app, const CliContext& context);

}  // namespace rangebook
