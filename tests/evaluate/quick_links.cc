// Tries the linker alone on many season pairs, in one process: precision, recall and what is left
// to ask, at the thresholds as they are.
//
//   quick_links GENERATORS LEVELS SEEDS [show]      lists parted by commas; seeds as 1-9
#include <cstdio>
#include <iostream>
#include <sstream>

#include "tests/evaluate/score.h"
#include "tests/evaluate/seasons.h"
#include "tests/evaluate/snapshot_of.h"
#include "tracker/likeness/likeness_matcher.h"

namespace rangebook::evaluate {
namespace {

struct Tried {
  Count links;
  int asked = 0;
  int asked_right = 0;
};

std::string text(const Line& line) {
  return "#" + std::to_string(line.style) + "." + std::to_string(line.piece) + " " + line.name +
         " [" + std::to_string(line.colours[0].price) + "; " + line.composition + "; " +
         line.description + "]";
}

Tried tried(const Seasons& seasons, bool show) {
  std::vector<const Line*> then;
  std::vector<const Line*> now;
  const Snapshot from = snapshot_of(seasons.shop, seasons.then, 1, then);
  const Snapshot to = snapshot_of(seasons.shop, seasons.now, 2, now);
  const LikenessMatcher matcher;
  const LinkSet links = link_lines(from, to, {}, &matcher);
  Tried result;
  std::set<int> right;
  std::map<int, const Line*> there;
  std::map<int, const Link*> asked;
  for (const Line* line : now) there[line->style] = line;
  for (const Link& link : links.links) {
    if (then[link.from]->style == now[link.to]->style) {
      if (right.insert(then[link.from]->style).second)
        result.links.right += link.authority != LinkAuthority::code;
      continue;
    }
    ++result.links.wrong;
    if (show)
      std::printf("wrong %.3f  %s\n             %s\n             %s\n", link.score,
                  text(*then[link.from]).c_str(), text(*now[link.to]).c_str(),
                  link.sentence.c_str());
  }
  for (const Link& link : links.ask) {
    ++result.asked;
    if (then[link.from]->style != now[link.to]->style) continue;
    ++result.asked_right;
    asked[then[link.from]->style] = &link;
  }
  std::set<int> missed;
  for (const Line* line : then) {
    if (!there.contains(line->style) || right.contains(line->style)) continue;
    if (!missed.insert(line->style).second) continue;
    ++result.links.missed;
    if (!show) continue;
    const auto found = asked.find(line->style);
    std::printf("missed %.3f %s\n             %s\n",
                found == asked.end() ? 0 : found->second->score, text(*line).c_str(),
                text(*there.at(line->style)).c_str());
  }
  return result;
}

std::vector<std::string> parts_of(const std::string& list) {
  std::vector<std::string> parts;
  std::stringstream in(list);
  for (std::string part; std::getline(in, part, ',');) parts.push_back(part);
  return parts;
}

void print(const std::string& what, const Tried& sum) {
  const int pairs = sum.links.right + sum.links.missed;
  std::printf(
      "%-34s pairs %5d  precision %6.2f%%  recall %6.2f%%  F1 %.4f  asked %5.2f%% (right %d of "
      "%d)\n",
      what.c_str(), pairs, 100 * sum.links.precision(), 100 * sum.links.recall(), sum.links.f1(),
      100.0 * sum.asked / std::max(pairs, 1), sum.asked_right, sum.asked);
}

int run(const std::vector<std::string>& words) {
  const auto dash = words[2].find('-');
  const auto first = std::stoull(words[2].substr(0, dash));
  const auto last = dash == std::string::npos ? first : std::stoull(words[2].substr(dash + 1));
  const std::map<std::string, Level> levels = {
      {"easy", Level::easy}, {"middle", Level::middle}, {"hard", Level::hard}};
  for (const bool names : {false, true}) {
    for (const std::string& level : parts_of(words[1])) {
      Tried all;
      for (const std::string& generator : parts_of(words[0])) {
        Tried sum;
        for (auto seed = first; seed <= last; ++seed) {
          Seasons seasons = make_seasons({generator, levels.at(level), seed});
          if (names) seasons = names_only(seasons);
          const Tried one = tried(
              seasons, words.size() > 3 && (words[3] == "show" || (words[3] == "names") == names));
          for (Tried* into : {&sum, &all}) {
            into->links.add(one.links);
            into->asked += one.asked;
            into->asked_right += one.asked_right;
          }
        }
        print((names ? "names-only " : "all-columns ") + level + " " + generator, sum);
      }
      print((names ? "names-only " : "all-columns ") + level + " ~", all);
    }
  }
  return 0;
}

}  // namespace
}  // namespace rangebook::evaluate

int main(int argc, char** argv) {
  if (argc < 4) return 2;
  return rangebook::evaluate::run({argv + 1, argv + argc});
}
