// From a word to a line, and from a line to its captures.
#include "tracker/app/line_search.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <optional>
#include <set>

#include "tracker/identity/pair_links.h"

namespace rangebook {
namespace {

using FoundIn = std::pair<ShopLines*, LineMatches>;

std::variant<std::uint32_t, NotThere> one_line(ShopLines& lines, const std::string& word,
                                               const LineMatches& matches) {
  std::set<std::uint32_t> meant;
  for (const SightingAt at : matches) meant.insert(lines.identities().at(at));
  if (meant.size() == 1) return *meant.begin();
  return too_many(lines, word, matches);
}

NotThere none(const std::string& word, const std::vector<std::string>& misses) {
  if (misses.empty()) return {"There are no shops in this book yet."};
  const auto helpful = std::find_if(misses.begin(), misses.end(),
                                    [](const std::string& miss) { return miss.ends_with("?"); });
  if (helpful != misses.end()) return {*helpful};
  if (misses.size() == 1) return {misses.front()};
  return {fmt::format("No shop has a line \"{}\", by code, reference or name.", word)};
}

NotThere several(const std::string& word, const std::vector<FoundIn>& found) {
  std::vector<std::string> slugs;
  for (const auto& [lines, matches] : found) slugs.push_back(lines->roll().shop.slug);
  return {fmt::format("\"{}\" is a line of several shops: {}. Say which with --shop.", word,
                      fmt::join(slugs, ", "))};
}

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

}  // namespace

LineSearch::LineSearch(const Book& book, const std::string& shop) : book_(book), shop_(shop) {
  std::vector<std::string> slugs{shop};
  if (shop.empty()) {
    slugs.clear();
    for (const auto& record : book.shops()) slugs.push_back(record.shop.slug);
  }
  for (const auto& slug : slugs) shops_.push_back(std::make_unique<ShopLines>(book, slug));
}

std::variant<MeantLine, NotThere> LineSearch::find(const std::string& word) {
  if (!shop_.empty()) {
    auto any = find_capture(book_, shop_, "");
    if (auto* missing = std::get_if<NotThere>(&any)) return std::move(*missing);
  }
  std::vector<FoundIn> found;
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
  return MeantLine{found[0].first, std::get<std::uint32_t>(line)};
}

std::vector<HistoryCapture> captures_of(ShopLines& lines, const LineIdentity& line, SightingAt from,
                                        Day until) {
  const Roll& roll = lines.roll();
  std::vector<HistoryCapture> captures;
  std::optional<SightingAt> last;
  auto next = std::find(line.seen.begin(), line.seen.end(), from);
  for (std::uint32_t place = from.capture; place < roll.captures.size(); ++place) {
    const CaptureInfo& info = roll.captures[place].info;
    if (info.on > until) break;
    HistoryCapture capture{info, refused_of(lines.book(), info.id), std::nullopt};
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

}  // namespace rangebook
