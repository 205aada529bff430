// `rangebook manual` in mdoc(7): what is said in --help, and around it what no single command says.
// Generated, because a page kept by hand misses the next option.
#include "tracker/app/cli_manual.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <cstdio>

#include "tracker/app/cli.h"
#include "tracker/app/cli_completion.h"

namespace rangebook {
namespace {

constexpr std::string_view kOpening = R"(.\" Made by `rangebook manual`.
.Dd November 26, 2026
.Dt RANGEBOOK 1
.Os
.Sh NAME
.Nm rangebook
.Nd keep every capture of a shop's range and say what changed
.Sh SYNOPSIS
.Nm
.Op Fl -book Ar FILE
.Ar command
.Op Ar words
.Sh DESCRIPTION
For an independent personal stylist who reviews shops.
Every season she goes back and asks what is there now: which sizes, from which price, in which fabric,
and what became of the lines she recommended.
.Nm
keeps what was captured of a shop on a day and compares two captures.
Every figure carries its day and the place it was read from.
A line that no capture looked for is never called gone.
.Pp
The book is one file on this machine.
Nothing is fetched but the addresses given to fetch, and nothing is sent.
.Sh COMMANDS
With any of them,
.Fl -help
shows its words and an example, and
.Fl -book Ar FILE
names the book.
)";

constexpr std::string_view kClosing = R"(.Sh ENVIRONMENT
.Bl -tag -width RANGEBOOK
.It Ev RANGEBOOK
The book, where
.Fl -book
does not say.
.It Ev XDG_DATA_HOME
Where the book is kept if nobody says.
.El
.Sh FILES
.Bl -tag -width Ds
.It Pa ~/.local/share/rangebook/my.rangebook
The book if nobody says.
.El
.Sh EXIT STATUS
.Bl -tag -width Ds
.It 0
Done.
.It 1
Done, with rejections: what could not be taken in is listed.
.It 2
The command was not understood, or names what is not there.
.It 3
The environment: a disk that is full, a file that cannot be read.
.El
.Sh CAVEATS
Prices, sizes and terms are as captured on their days; shops change them at any time.
Statutory rights differ by country: check the local law and the shop's own page.
Measurements and notes about people are private: they stay on this machine, and the book is not
encrypted.
Respect a shop's terms of use and its robots.txt.
Saved pictures are for private notes.
)";

/// Text between macros: nothing in it is read as one.
std::string text(std::string_view words) {
  std::string out;
  for (const char sign : words) {
    if ((out.empty() || out.back() == '\n') && (sign == '.' || sign == '\'')) out += "\\&";
    if (sign == '\\') {
      out += "\\e";
    } else if (sign == '-') {
      out += "\\-";
    } else {
      out += sign;
    }
  }
  return out;
}

/// One word of a macro line.
std::string macro_word(std::string_view word) {
  std::string out = "\"";
  for (const char sign : text(word))
    out += sign == '"' ? std::string("\"\"") : std::string(1, sign);
  return out + '"';
}

std::string option_item(const CLI::Option& option) {
  const std::string value = option.get_type_name();
  std::string item = ".It ";
  if (option.get_lnames().empty()) {
    item += "Ar " + macro_word(option.get_name(true));
  } else {
    item += "Fl -" + text(option.get_lnames().front());
    if (option.get_expected_max() > 0 && !value.empty()) item += " Ar " + macro_word(value);
  }
  return item + '\n' + text(option.get_description()) + '\n';
}

std::string options_list(const CLI::App& app) {
  std::string items;
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_lnames() == std::vector<std::string>{"help"}) continue;
    items += option_item(*option);
  }
  return items.empty() ? "" : ".Bl -tag -width Ds\n" + items + ".El\n";
}

std::string example(const CLI::App& app) {
  constexpr std::string_view kLead = "Example: ";
  std::string footer = app.get_footer();
  if (!footer.starts_with(kLead)) return {};
  footer.erase(0, kLead.size());
  std::string lines;
  for (std::size_t at = 0; at <= footer.size();) {
    const std::size_t end = std::min(footer.find('\n', at), footer.size());
    const std::size_t start = std::min(footer.find_first_not_of(' ', at), end);
    lines += text(std::string_view(footer).substr(start, end - start)) + '\n';
    at = end + 1;
  }
  return ".Bd -literal -offset indent\n" + lines + ".Ed\n";
}

std::string manual_page(const CLI::App& app) {
  std::string out(kOpening);
  for (const NamedCommand& command : all_commands(app)) {
    if (command.path.empty()) continue;
    out += fmt::format(".Ss {}\n{}.\n", command.path, text(command.app->get_description()));
    out += options_list(*command.app) + example(*command.app);
  }
  return out + std::string(kClosing);
}

}  // namespace

void add_manual_command(CLI::App& app, const CliContext& context) {
  CLI::App* sub = app.add_subcommand("manual", "Write the manual page");
  sub->footer("Example: rangebook manual >rangebook.1");
  sub->fallthrough();
  sub->parse_complete_callback([context, top = &app] {
    context.act([top] {
      const std::string page = manual_page(*top);
      std::fwrite(page.data(), 1, page.size(), stdout);
      return kDone;
    });
  });
}

}  // namespace rangebook
