// What was typed against every wording of every line.
#include "tracker/app/line_lookup.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <functional>
#include <map>
#include <optional>
#include <sstream>
#include <tuple>
#include <utility>

#include "schema/nearest_word.h"
#include "tracker/link_keys.h"
#include "tracker/reference.h"
#include "tracker/store/wordings.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

constexpr std::size_t kShown = 8;

using Matches = std::function<bool(const Wording&)>;

std::string folded(std::string_view text) { return fold_text(space_folded(text)); }

bool has_all_words(const std::string& name, const std::vector<std::string>& words) {
  const auto of_name = words_in(name);
  return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
    return std::find(of_name.begin(), of_name.end(), word) != of_name.end();
  });
}

/// Wordings are read once and looked through with one rule after the other.
class Lookup {
 public:
  Lookup(ShopLines& lines, const std::string& word)
      : lines_(lines), word_(folded(word)), wordings_(read_wordings(lines.book(), lines.roll())) {}

  LineMatches by_code() const {
    return where([&](const Wording& each) {
      return !each.card.line_code.empty() && folded(each.card.line_code) == word_;
    });
  }
  LineMatches by_name() const {
    return where([&](const Wording& each) { return folded(each.card.name) == word_; });
  }
  LineMatches by_words() const {
    const auto words = words_in(word_);
    if (words.empty()) return {};
    return where([&](const Wording& each) { return has_all_words(folded(each.card.name), words); });
  }
  LineMatches by_reference() const {
    const std::string typed = typed_reference(word_);
    LineMatches found;
    if (typed.empty()) return found;
    for (const LineIdentity& line : lines_.identities().lines) {
      if (lines_.line_reference(line).starts_with(typed)) found.push_back(line.seen.back());
    }
    return found;
  }

  std::vector<std::string> all_words() const {
    std::vector<std::string> all;
    for (const Wording& each : wordings_) {
      for (const std::string* text : {&each.card.line_code, &each.card.name}) {
        if (!text->empty()) all.push_back(*text);
      }
    }
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
  }

 private:
  /// One match for each number in the book; of a name, which may pass to another style, one for
  /// each line.
  LineMatches where(const Matches& matches) const {
    std::map<std::pair<LineId, std::uint32_t>, const Wording*> latest;
    for (const Wording& each : wordings_) {
      if (!matches(each)) continue;
      const LineId line = lines_.roll().captures[each.at.capture].lines[each.at.row];
      const bool unsure = is_unsure(lines_.roll(), line);
      latest[{line, unsure ? lines_.identities().at(each.at) : 0}] = &each;
    }
    std::vector<const Wording*> sorted;
    for (const auto& [line, wording] : latest) sorted.push_back(wording);
    std::sort(sorted.begin(), sorted.end(), [](const Wording* a, const Wording* b) {
      return std::tie(a->card.line_code, a->card.name, a->at) <
             std::tie(b->card.line_code, b->card.name, b->at);
    });
    LineMatches found;
    for (const Wording* wording : sorted) found.push_back(wording->at);
    return found;
  }

  ShopLines& lines_;
  std::string word_;
  std::vector<Wording> wordings_;
};

std::string choice_text(ShopLines& lines, SightingAt at) {
  const LineGlimpse line = lines.glimpse(at);
  const Identities& all = lines.identities();
  const std::string reference =
      lines.line_reference(all.lines[all.at(at)]).substr(0, kReferenceSigns);
  return fmt::format("{}{} ({} of {}), reference {}", line.name,
                     line.code.empty() ? "" : ", code " + line.code, line.seen->season,
                     to_string(line.seen->on), reference);
}

}  // namespace

std::vector<std::string> words_in(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> words;
  for (std::string word; in >> word;) words.push_back(word);
  return words;
}

std::variant<LineMatches, NotThere> find_lines(ShopLines& lines, const std::string& word) {
  const std::string& shop = lines.roll().shop.slug;
  if (lines.roll().captures.empty()) return NotThere{shop + " has no captures yet."};
  const Lookup lookup(lines, word);
  for (const auto rule :
       {&Lookup::by_code, &Lookup::by_reference, &Lookup::by_name, &Lookup::by_words}) {
    auto found = (lookup.*rule)();
    if (!found.empty()) return found;
  }
  return NotThere{fmt::format("{} has no line \"{}\", by code, reference or name.{}", shop, word,
                              did_you_mean(word, lookup.all_words()))};
}

NotThere too_many(ShopLines& lines, const std::string& word, const LineMatches& matches) {
  std::string text =
      fmt::format("\"{}\" can mean {} lines. Say it by code or reference:", word, matches.size());
  for (std::size_t i = 0; i < std::min(matches.size(), kShown); ++i) {
    text += "\n  " + choice_text(lines, matches[i]);
  }
  if (matches.size() > kShown) text += fmt::format("\n  .. and {} more", matches.size() - kShown);
  return {text};
}

}  // namespace rangebook
