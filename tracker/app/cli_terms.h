// The words of `rangebook terms`.
#pragma once

#include <functional>
#include <memory>
#include <string>

namespace CLI {
class App;
}

namespace rangebook {

/// What a command line needs of the rest of the program.
struct CliContext {
  std::function<std::string()> book;              ///< the book in use
  std::function<void(std::function<int()>)> act;  ///< what to do once all words are read
};

/// Adds `terms` and its verbs.
void add_terms_commands(CLI::App& app, const CliContext& context);

}  // namespace rangebook
