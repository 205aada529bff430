// One table of commands and options for both shells; files are completed where an option or word
// is a file.
#include "tracker/app/cli_completion.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>

#include "schema/nearest_word.h"
#include "tracker/app/cli.h"
#include "tracker/app/cli_manual.h"
#include "tracker/app/cli_words.h"

namespace rangebook {
namespace {

struct CommandWords {
  std::string path;                ///< `terms show`; empty for the program itself
  std::vector<std::string> verbs;  ///< that may follow
  std::vector<std::string> options;
};

std::vector<std::string> options_of(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::Option* option : app.get_options()) {
    for (const auto& name : option->get_lnames()) names.push_back("--" + name);
  }
  return names;
}

CommandWords words_of(const NamedCommand& command) {
  CommandWords words{command.path, {}, options_of(*command.app)};
  if (!command.path.empty()) words.options.emplace_back("--book");
  std::sort(words.options.begin(), words.options.end());
  words.options.erase(std::unique(words.options.begin(), words.options.end()), words.options.end());
  for (const CLI::App* sub : command.app->get_subcommands(nullptr)) {
    words.verbs.push_back(sub->get_name());
  }
  return words;
}

std::vector<CommandWords> table_of(const CLI::App& app) {
  std::vector<CommandWords> all;
  for (const NamedCommand& command : all_commands(app)) all.push_back(words_of(command));
  return all;
}

/// Shell code that sets `verb_path` to the verbs said so far and `verbs` and `options` to what may
/// follow; the same in bash and zsh.
std::string case_table(const std::vector<CommandWords>& table) {
  std::string out;
  for (const CommandWords& each : table) {
    out += fmt::format("    \"{}\") verbs=\"{}\"; options=\"{}\" ;;\n", each.path,
                       fmt::join(each.verbs, " "), fmt::join(each.options, " "));
  }
  return out;
}

std::string functions(const std::vector<CommandWords>& table) {
  return "_rangebook_words() {\n  case \"$1\" in\n" + case_table(table) +
         "    *) verbs=\"\"; options=\"\" ;;\n  esac\n}\n"
         "# What was said so far, as a path of verbs.\n"
         "_rangebook_path() {\n"
         "  local word verbs options\n"
         "  verb_path=\"\"\n"
         "  for word in \"$@\"; do\n"
         "    _rangebook_words \"$verb_path\"\n"
         "    case \" $verbs \" in *\" $word \"*) verb_path=\"${verb_path:+$verb_path }$word\" ;; "
         "esac\n"
         "  done\n"
         "}\n";
}

std::string bash_script(const std::vector<CommandWords>& table) {
  return "# bash completion for rangebook, made by `rangebook completion bash`\n" +
         functions(table) +
         "_rangebook() {\n"
         "  local verb_path verbs options word=${COMP_WORDS[COMP_CWORD]}\n"
         "  _rangebook_path \"${COMP_WORDS[@]:1:COMP_CWORD-1}\"\n"
         "  _rangebook_words \"$verb_path\"\n"
         "  if [[ $word == -* ]]; then\n"
         "    mapfile -t COMPREPLY < <(compgen -W \"$options\" -- \"$word\")\n"
         "  elif [[ -n $verbs && ${COMP_WORDS[COMP_CWORD-1]} != -* ]]; then\n"
         "    mapfile -t COMPREPLY < <(compgen -W \"$verbs\" -- \"$word\")\n"
         "  else\n"
         "    COMPREPLY=()\n"
         "  fi\n"
         "}\n"
         "complete -o default -o bashdefault -F _rangebook rangebook\n";
}

std::string zsh_script(const std::vector<CommandWords>& table) {
  return "#compdef rangebook\n"
         "# zsh completion for rangebook, made by `rangebook completion zsh`\n" +
         functions(table) +
         "_rangebook() {\n"
         "  local verb_path verbs options\n"
         "  local -a said=(\"${words[@]:1:$((CURRENT-2))}\")\n"
         "  _rangebook_path \"${said[@]}\"\n"
         "  _rangebook_words \"$verb_path\"\n"
         "  if [[ ${words[CURRENT]} == -* ]]; then\n"
         "    compadd -- ${=options}\n"
         "  elif [[ -n $verbs && ${words[CURRENT-1]} != -* ]]; then\n"
         "    compadd -- ${=verbs}\n"
         "  else\n"
         "    _files\n"
         "  fi\n"
         "}\n"
         "if [ \"$funcstack[1]\" = _rangebook ]; then _rangebook \"$@\"; "
         "else compdef _rangebook rangebook; fi\n";
}

int write_completion(const CLI::App& app, const std::string& shell) {
  const std::vector<std::string> shells{"bash", "zsh"};
  if (std::find(shells.begin(), shells.end(), shell) == shells.end()) {
    throw UsageError{fmt::format("There is no completion for \"{}\".{} There is: bash, zsh.", shell,
                                 did_you_mean(shell, shells))};
  }
  const auto table = table_of(app);
  const std::string script = shell == "bash" ? bash_script(table) : zsh_script(table);
  std::fwrite(script.data(), 1, script.size(), stdout);
  return kDone;
}

}  // namespace

std::vector<NamedCommand> all_commands(const CLI::App& app) {
  std::vector<NamedCommand> all;
  std::vector<NamedCommand> waiting{{"", &app}};
  while (!waiting.empty()) {
    const NamedCommand next = waiting.back();
    waiting.pop_back();
    auto subs = next.app->get_subcommands(nullptr);
    std::reverse(subs.begin(), subs.end());
    for (const CLI::App* sub : subs) {
      waiting.push_back({next.path + (next.path.empty() ? "" : " ") + sub->get_name(), sub});
    }
    all.push_back(next);
  }
  return all;
}

void add_completion_command(CLI::App& app, const CliContext& context) {
  auto shell = std::make_shared<std::string>();
  CLI::App* sub = app.add_subcommand("completion", "Write the completion script of a shell");
  sub->footer(
      "Example: rangebook completion bash >~/.local/share/bash-completion/completions/rangebook");
  sub->fallthrough();
  sub->add_option("shell", *shell, "bash or zsh")->required();
  sub->parse_complete_callback([context, shell, top = &app] {
    context.act([shell, top] { return write_completion(*top, *shell); });
  });
  add_manual_command(app, context);
}

}  // namespace rangebook
