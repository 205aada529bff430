// From a word to a line, and from a line to its captures.
#include "tracker/app/history_desk.h"

#include <set>
#include <utility>
#include <vector>

#include "tracker/app/line_search.h"
#include "tracker/app/link_desk.h"
#include "tracker/reference.h"

namespace rangebook {
namespace {

/// Pairs of which one side is a sighting of the line.
std::vector<LinkCase> about(const std::vector<LinkCase>& pairs, const std::set<LineId>& numbers) {
  std::vector<LinkCase> found;
  for (const LinkCase& pair : pairs) {
    if (numbers.contains(pair.then.id) || numbers.contains(pair.now.id)) found.push_back(pair);
  }
  return found;
}

}  // namespace

std::variant<LineHistory, NotThere> line_history(const Book& book, const std::string& shop,
                                                 const std::string& word) {
  LineSearch search(book, shop);
  auto found = search.find(word);
  if (auto* missing = std::get_if<NotThere>(&found)) return std::move(*missing);
  auto& [lines, index] = std::get<MeantLine>(found);
  const LineIdentity& line = lines->identities().lines[index];
  std::set<LineId> numbers;
  for (const SightingAt at : line.seen) {
    numbers.insert(lines->roll().captures[at.capture].lines[at.row]);
  }
  LineHistory history;
  history.shop = lines->roll().shop;
  history.id = line.id;
  history.reference = lines->line_reference(line).substr(0, kReferenceSigns);
  history.entries =
      tell_history(history.shop, captures_of(*lines, line, line.seen.front(), Day::max()));
  const LinkList links = list_links(*lines);
  history.waiting = about(links.waiting, numbers);
  history.decided = about(links.decided, numbers);
  return history;
}

}  // namespace rangebook
