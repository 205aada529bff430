// From a word to a line, and from a line to its captures.
#include "tracker/app/history_desk.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "tracker/app/line_lookup.h"
#include "tracker/app/link_desk.h"
#include "tracker/app/shop_lines.h"
#include "tracker/identity/pair_links.h"
#include "tracker/line_history.h"
#include "tracker/reference.h"
#include "tracker/store/snapshot_reader.h"

namespace rangebook {
namespace {

/// A line that a word means.
struct Meant {
  ShopLines* lines = nullptr;
  std::uint32_t line = 0;
};

std::variant<std::uint32_t, NotThere> one_line(ShopLines& lines, const std::string& word,
                                               const LineMatches& matches) {
  std::set<std::uint32_t> meant;
  for (const SightingAt at : matches) meant.insert(lines.identities().at(at));
  if (meant.size() == 1) return *meant.begin();
  return too_many(lines, word, matches);
}

/// Shops that have what the word says, and what to say if none has.
class Search {
 public:
  Search(const Book& book, const std::string& shop) {
    std::vector<std::string> slugs{shop};
    if (shop.empty()) {
      slugs.clear();
      for (const auto& record : book.shops()) slugs.push_back(record.shop.slug);
    }
    for (const auto& slug : slugs) shops_.push_back(std::make_unique<ShopLines>(book, slug));
  }

  std::variant<Meant, NotThere> find(const std::string& word) {
    std::vector<std::pair<ShopLines*, LineMatches>> found;
    std::vector<std::string> misses;
    for (const auto& lines : shops_) {
      auto matches = find_lines(*lines, word);
      if (auto* missing = std::get_if<NotThere>(&matches)) {
        misses.push_back(std::move(missing->message));
      } else {
        found.emplace_back(lines.get(), std::move(std::get<LineMatches>(matches)));
      }
    }
    if (found.empty()) return none(word, misses);
    if (found.size() > 1) return several(word, found);
    auto line = one_line(*found[0].first, word, found[0].second);
    if (auto* unclear = std::get_if<NotThere>(&line)) return std::move(*unclear);
    return Meant{found[0].first, std::get<std::uint32_t>(line)};
  }

 private:
  static NotThere none(const std::string& word, const std::vector<std::string>& misses) {
    if (misses.empty()) return {"There are no shops in this book yet."};
    const auto helpful = std::find_if(misses.begin(), misses.end(),
                                      [](const std::string& miss) { return miss.ends_with("?"); });
    if (helpful != misses.end()) return {*helpful};
    if (misses.size() == 1) return {misses.front()};
    return {fmt::format("No shop has a line \"{}\", by code, reference or name.", word)};
  }

  static NotThere several(const std::string& word,
                          const std::vector<std::pair<ShopLines*, LineMatches>>& found) {
    std::vector<std::string> slugs;
    for (const auto& [lines, matches] : found) slugs.push_back(lines->roll().shop.slug);
    return {fmt::format("\"{}\" is a line of several shops: {}. Say which with --shop.", word,
                        fmt::join(slugs, ", "))};
  }

  std::vector<std::unique_ptr<ShopLines>> shops_;
};

std::vector<RefusedLine> refused_of(const Book& book, std::int64_t capture) {
  std::vector<RefusedLine> refused;
  for (const auto& rejection : book.rejections(capture)) {
    if (rejection.refused == Refused::row) refused.push_back({rejection.line_code, rejection.name});
  }
  return refused;
}

/// Rows under codes that the capture of `last` does not have may be the line under a new code.
void drop_unknown_codes(std::vector<RefusedLine>& rows, ShopLines& lines, SightingAt last) {
  for (RefusedLine& row : rows) {
    if (!lines.has_code(last.capture, row.line_code)) row.line_code.clear();
  }
}

/// Captures from the first sighting on. Each says why its row is the line seen before.
std::vector<HistoryCapture> captures_of(ShopLines& lines, std::uint32_t index) {
  const Roll& roll = lines.roll();
  const LineIdentity& line = lines.identities().lines[index];
  std::vector<HistoryCapture> captures;
  std::optional<SightingAt> last;
  auto next = line.seen.begin();
  for (std::uint32_t place = next->capture; place < roll.captures.size(); ++place) {
    HistoryCapture capture{roll.captures[place].info,
                           refused_of(lines.book(), roll.captures[place].info.id), std::nullopt};
    if (next != line.seen.end() && next->capture == place) {
      capture.line = std::move(lines.source().lines(place, {next->row}).front());
      capture.line->id = line.id;
      if (last) capture.link = link_sentence(roll, line, *last, *next, capture.line->listing.card);
      last = *next++;
    } else {
      drop_unknown_codes(capture.refused, lines, *last);
    }
    captures.push_back(std::move(capture));
  }
  return captures;
}

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
  if (!shop.empty()) {
    const auto any = find_capture(book, shop, "");
    if (const auto* missing = std::get_if<NotThere>(&any)) return *missing;
  }
  Search search(book, shop);
  auto found = search.find(word);
  if (auto* missing = std::get_if<NotThere>(&found)) return std::move(*missing);
  auto& [lines, index] = std::get<Meant>(found);
  const LineIdentity& line = lines->identities().lines[index];
  std::set<LineId> numbers;
  for (const SightingAt at : line.seen) {
    numbers.insert(lines->roll().captures[at.capture].lines[at.row]);
  }
  LineHistory history;
  history.shop = lines->roll().shop;
  history.id = line.id;
  history.reference = lines->line_reference(line).substr(0, kReferenceSigns);
  history.entries = tell_history(history.shop, captures_of(*lines, index));
  const LinkList links = list_links(*lines);
  history.waiting = about(links.waiting, numbers);
  history.decided = about(links.decided, numbers);
  return history;
}

}  // namespace rangebook
