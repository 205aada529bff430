// Completion for shells, made from the commands themselves.
#pragma once

#include <string>
#include <vector>

#include "tracker/app/cli_terms.h"

namespace rangebook {

/// A command by its verbs: `picks words add`; empty for the program itself.
struct NamedCommand {
  std::string path;
  const CLI::App* app = nullptr;
};
/// The program and every command under it, each before those under it.
std::vector<NamedCommand> all_commands(const CLI::App& app);

/// Adds `completion` and `manual`. All other commands have to be there already.
void add_completion_command(CLI::App& app, const CliContext& context);

}  // namespace rangebook
