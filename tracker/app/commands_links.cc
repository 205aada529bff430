// Which line is which: what waits, saying yes or no, taking it back; and a line's history.
#include <fmt/format.h>

#include <string_view>

#include "reports/link_list.h"
#include "tracker/app/cli.h"
#include "tracker/app/commands.h"
#include "tracker/app/history_desk.h"
#include "tracker/app/link_desk.h"
#include "tracker/app/report_forms.h"

namespace rangebook {
namespace {

std::string links_in(const LinkList& list, bool decided, const std::string& format) {
  if (format == "json") return links_json(list);
  if (format == "csv") return links_csv(list);
  return links_text(list, decided ? LinkPart::decided : LinkPart::waiting);
}

std::string_view word_of(std::optional<bool> same) {
  return !same ? "no decision" : *same ? "yes" : "no";
}

void print_settled(const Settled& settled) {
  const LinkCase& pair = settled.about;
  const bool again = settled.was && settled.was == pair.same;
  fmt::print("{}: {} and {} {} ({}).{}\n", pair.reference, line_phrase(pair.then),
             line_phrase(pair.now), *pair.same ? "are the same line" : "are two lines",
             again ? "as you said before" : "you said so",
             settled.was && !again
                 ? fmt::format(" You had said {}; to have that again: rangebook links undo {}",
                               word_of(settled.was), pair.reference)
                 : "");
}

void print_taken_back(const Settled& settled) {
  const LinkCase& pair = settled.about;
  fmt::print("{}: your {} is taken back. {} and {} {}.\n", pair.reference, word_of(settled.was),
             line_phrase(pair.then), line_phrase(pair.now),
             !pair.same   ? "are what the evidence says again"
             : *pair.same ? "are the same line again, as you said before"
                          : "are two lines again, as you said before");
}

template <typename Print>
int print_all(const SettledOrNot& outcome, Print print) {
  if (const auto* missing = std::get_if<NotThere>(&outcome)) return not_there(*missing);
  for (const Settled& each : std::get<std::vector<Settled>>(outcome)) print(each);
  return kDone;
}

}  // namespace

int command_links(const std::string& book, const CompareRequest& request, bool decided,
                  const OutputChoice& output) {
  const auto list = list_links(Book::open(book, false), request);
  if (const auto* missing = std::get_if<NotThere>(&list)) return not_there(*missing);
  write_output(links_in(std::get<LinkList>(list), decided, output.format), output);
  return kDone;
}

int command_settle_links(const std::string& book, const std::string& shop,
                         const std::vector<std::string>& references, bool same) {
  Book opened = Book::open(book, false);
  return print_all(settle_links(opened, shop, references, same), print_settled);
}

int command_settle_lines(const std::string& book, const TwoLines& lines, bool same) {
  Book opened = Book::open(book, false);
  return print_all(settle_lines(opened, lines, same), print_settled);
}

int command_unsettle_link(const std::string& book, const std::string& shop,
                          const std::string& reference) {
  Book opened = Book::open(book, false);
  return print_all(unsettle_link(opened, shop, reference), print_taken_back);
}

int command_history(const std::string& book, const std::string& shop, const std::string& line,
                    const OutputChoice& output) {
  const auto history = line_history(Book::open(book, false), shop, line);
  if (const auto* missing = std::get_if<NotThere>(&history)) return not_there(*missing);
  write_output(history_in(std::get<LineHistory>(history), output), output);
  return kDone;
}

}  // namespace rangebook
