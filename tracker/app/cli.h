// The command line: words to requests, requests to output and exit codes.
#pragma once

#include <string>
#include <vector>

namespace rangebook {

/// Exit codes, the same for every command.
inline constexpr int kDone = 0;
inline constexpr int kDoneWithRejections = 1;
inline constexpr int kUsage = 2;
inline constexpr int kEnvironment = 3;

/// Runs one command line without the program's name. Output goes to stdout, messages to stderr.
/// Throws Error when the environment is broken.
int run_command_line(const std::vector<std::string>& words);

/// Where the book is when nobody says: $RANGEBOOK, else the XDG data folder
/// (`$XDG_DATA_HOME` or `~/.local/share`) + `/rangebook/my.rangebook`.
std::string default_book_path();

}  // namespace rangebook
