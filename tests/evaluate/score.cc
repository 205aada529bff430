// Reads the answers, brings them to styles, and counts.
#include "tests/evaluate/score.h"

#include <nlohmann/json.hpp>
#include <utility>

namespace rangebook::evaluate {
namespace {

using nlohmann::json;
using NameAndCode = std::pair<std::string, std::string>;

NameAndCode key_of(const json& side) {
  return {side.at("name").get<std::string>(), side.at("code").get<std::string>()};
}
NameAndCode key_of(const Line& line) { return {line.name, line.code}; }

std::string labels(const json& side) {
  std::string text;
  if (side.is_null()) return text;
  for (const json& label : side.at("labels"))
    text += (text.empty() ? "" : " ") + label.get<std::string>();
  return text;
}
std::string amount(const json& side, const char* key) {
  return std::to_string(side.at(key).get<Amount>());
}

/// What a change is about, in the words of the truth.
std::string what_of(const std::string& kind, const json& change) {
  const json& before = change.at("before");
  const json& after = change.at("after");
  if (kind == "line-renamed") return key_of(before).first + " > " + key_of(after).first;
  if (kind == "line-recoded") return key_of(before).second + " > " + key_of(after).second;
  if (kind == "colour-added") return after.at("colour").get<std::string>();
  if (kind == "colour-dropped") return before.at("colour").get<std::string>();
  if (kind == "category-moved") return after.at("category").get<std::string>();
  if (kind.starts_with("size") || kind.starts_with("fit-range"))
    return labels(before) + " > " + labels(after);
  if (kind == "price-up" || kind == "price-down") {
    const auto full = [](const json& side) {
      return amount(side,
                    side.contains("full_amount_minor") ? "full_amount_minor" : "amount_minor");
    };
    return full(before) + " > " + full(after);
  }
  if (kind.starts_with("mark"))
    return amount(before, "amount_minor") + " > " + amount(after, "amount_minor");
  return "";
}

/// The lines of one capture by name and code; refused ones are not there.
class Index {
 public:
  explicit Index(const Capture& capture) {
    for (const Line& line : capture.lines) {
      if (!line.refused) lines_[key_of(line)] = &line;
    }
  }
  const Line* find(const NameAndCode& key) const {
    const auto found = lines_.find(key);
    return found == lines_.end() ? nullptr : found->second;
  }
  const std::map<NameAndCode, const Line*>& all() const { return lines_; }

 private:
  std::map<NameAndCode, const Line*> lines_;
};

class Judge {
 public:
  Judge(const Seasons& seasons, json said)
      : said_(std::move(said)),
        truth_(truth_of(seasons)),
        then_(seasons.then),
        now_(seasons.now),
        earlier_(seasons.earlier) {}

  Score score() {
    for (const json& change : said_.at("changes")) {
      if (!change.at("line").is_null()) take(change);
    }
    judge_changes();
    judge_links();
    count_asked();
    return std::move(score_);
  }

 private:
  void take(const json& change) {
    const auto kind = change.at("kind").get<std::string>();
    const bool gone = change.at("after").is_null() && kind.starts_with("line-");
    const bool come = change.at("before").is_null() && kind.starts_with("line-");
    const NameAndCode key =
        key_of(gone && kind != "line-returned" ? change.at("before") : change.at("line"));
    if (kind == "line-dropped" || kind == "line-not-covered") gone_.insert(key);
    if (kind == "line-new" || kind == "line-returned" || come) come_.insert(key);
    if (kind == "line-renamed" || kind == "line-recoded")
      pairs_.insert({key_of(change.at("before")), key_of(change.at("after"))});
    const Line* line = gone ? then_.find(key) : now_.find(key);
    if (line == nullptr) {
      score_.remarks.push_back("of no line: " + change.dump());
      ++score_.kinds[kind].wrong;
      return;
    }
    said_changes_.insert({kind, line->style, what_of(kind, change)});
  }

  bool judged(const Expected& change) const {
    if (truth_.split.contains(change.style)) return false;
    return change.kind != "line-renamed" || !truth_.respelt.contains(change.style);
  }
  void judge_changes() {
    for (const Expected& change : said_changes_) {
      if (!judged(change)) continue;
      const bool right = truth_.changes.contains(change);
      ++(right ? score_.kinds[change.kind].right : score_.kinds[change.kind].wrong);
      if (!right) remark("unfounded", change);
    }
    for (const Expected& change : truth_.changes) {
      if (!judged(change) || said_changes_.contains(change)) continue;
      ++score_.kinds[change.kind].missed;
      remark("missing", change);
    }
  }
  void remark(const std::string& verdict, const Expected& change) {
    score_.remarks.push_back(verdict + ": " + change.kind + " #" + std::to_string(change.style) +
                             " " + change.what);
  }

  /// The notes say how many pairs wait: "3 pairs wait for a yes or no: ..".
  void count_asked() {
    for (const json& note : said_.at("coverage").at("notes")) {
      const auto text = note.get<std::string>();
      if (text.find(" for a yes or no") != std::string::npos) score_.asked = std::stoi(text);
    }
  }

  void judge_links() {
    find_silent_pairs();
    std::set<int> right;
    for (const auto& [before, after] : pairs_) {
      const Line* then = then_.find(before);
      const Line* now = now_.find(after);
      if (then == nullptr || now == nullptr) {
        score_.remarks.push_back("a pair of unknown lines: " + before.first + " > " + after.first);
        continue;
      }
      Count& count = then->code == now->code && !now->code.empty() ? score_.by_code : score_.links;
      if (then->style == now->style) {
        // Of a split style one pair is the line, and it is counted once.
        if (right.insert(then->style).second) ++count.right;
        continue;
      }
      ++count.wrong;
      score_.remarks.push_back("wrong pair: " + text(*then) + "  =  " + text(*now));
    }
    std::map<int, const Line*> there;
    for (const auto& [key, line] : now_.all()) there[line->style] = line;
    std::set<int> missed;
    for (const auto& [key, then] : then_.all()) {
      const auto found = there.find(then->style);
      if (found == there.end() || right.contains(then->style) || !missed.insert(then->style).second)
        continue;
      const bool coded = then->code == found->second->code && !then->code.empty();
      ++(coded ? score_.by_code : score_.links).missed;
      score_.remarks.push_back("missed pair: " + text(*then) + "  =  " + text(*found->second));
    }
  }
  /// A carried line without a new name or code is not in the changes: it has equal ones on both
  /// sides, and neither side is called gone or new.
  void find_silent_pairs() {
    std::set<NameAndCode> paired_then;
    std::set<NameAndCode> paired_now;
    for (const auto& [before, after] : pairs_) {
      paired_then.insert(before);
      paired_now.insert(after);
    }
    for (const auto& [key, line] : then_.all()) {
      if (gone_.contains(key) || paired_then.contains(key)) continue;
      if (now_.find(key) == nullptr || come_.contains(key) || paired_now.contains(key)) {
        score_.remarks.push_back("nothing is said of " + key.first + " (" + key.second + ")");
      } else {
        pairs_.insert({key, key});
      }
    }
  }
  static std::string text(const Line& line) {
    return "#" + std::to_string(line.style) + " " + line.name + " (" + line.code + ", " +
           std::to_string(line.colours[0].price) + ", " + line.composition + ", " +
           line.description + ")";
  }

  json said_;
  Truth truth_;
  Index then_;
  Index now_;
  Index earlier_;
  Score score_;
  std::set<Expected> said_changes_;
  std::set<NameAndCode> gone_;
  std::set<NameAndCode> come_;
  std::set<std::pair<NameAndCode, NameAndCode>> pairs_;
};

}  // namespace

void Score::add(const Score& other) {
  links.add(other.links);
  by_code.add(other.by_code);
  asked += other.asked;
  for (const auto& [kind, count] : other.kinds) kinds[kind].add(count);
}

Score score_of(const Seasons& seasons, const std::string& changes) {
  return Judge(seasons, json::parse(changes)).score();
}

}  // namespace rangebook::evaluate
