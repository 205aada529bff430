// Questions and decisions, by reference.
#include "tracker/app/link_desk.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <memory>
#include <optional>
#include <tuple>
#include <utility>

#include "schema/nearest_word.h"
#include "tracker/app/line_lookup.h"
#include "tracker/app/shop_lines.h"
#include "tracker/reference.h"
#include "tracker/store/decisions.h"

namespace rangebook {
namespace {

/// A pair with the decision it would become.
struct Pair {
  LinkDecision about;
  LinkCase shown;
};

LinkCase case_of(ShopLines& lines, const LinkDecision& about, double score, std::string sentence) {
  LinkCase shown;
  shown.reference = lines.pair_reference(about);
  shown.then = lines.glimpse(about.a, about.a_on);
  shown.now = lines.glimpse(about.b, about.b_on);
  const auto when = [](const LineGlimpse& line) {
    return line.seen ? std::pair(line.seen->on, line.seen->capture)
                     : std::pair(Day{}, std::int64_t{0});
  };
  if (when(shown.now) < when(shown.then)) std::swap(shown.then, shown.now);
  shown.score = score;
  shown.sentence = std::move(sentence);
  return shown;
}

Pair pair_of(ShopLines& lines, const FoundLink& question) {
  const LinkDecision about = decision_of(lines.roll(), question, true);
  return {about, case_of(lines, about, question.score, question.sentence)};
}

Pair pair_of(ShopLines& lines, const KeptDecision& kept) {
  Pair pair{kept.about, case_of(lines, kept.about, kept.score, kept.sentence)};
  pair.shown.same = kept.about.same;
  return pair;
}

/// Best first; equals by what they say, never by their numbers.
std::vector<Pair> waiting_pairs(ShopLines& lines) {
  std::vector<Pair> pairs;
  for (const FoundLink& question : lines.identities().ask) {
    pairs.push_back(pair_of(lines, question));
  }
  const auto words = [](const LineGlimpse& line) { return std::tie(line.name, line.code); };
  std::sort(pairs.begin(), pairs.end(), [&](const Pair& x, const Pair& y) {
    if (x.shown.score != y.shown.score) return x.shown.score > y.shown.score;
    return std::tuple(words(x.shown.then), words(x.shown.now), x.shown.reference) <
           std::tuple(words(y.shown.then), words(y.shown.now), y.shown.reference);
  });
  return pairs;
}

std::vector<Pair> decided_pairs(ShopLines& lines) {
  std::vector<Pair> pairs;
  for (const KeptDecision& kept : kept_decisions(lines.book(), lines.roll().shop.slug)) {
    pairs.push_back(pair_of(lines, kept));
  }
  std::reverse(pairs.begin(), pairs.end());
  return pairs;
}

/// Both lists with references as short as they can be.
LinkList shown_list(std::string shop, std::vector<Pair> waiting, std::vector<Pair> decided) {
  LinkList list;
  list.shop = std::move(shop);
  for (Pair& pair : waiting) list.waiting.push_back(std::move(pair.shown));
  for (Pair& pair : decided) list.decided.push_back(std::move(pair.shown));
  std::vector<LinkCase*> all;
  for (LinkCase& each : list.waiting) all.push_back(&each);
  for (LinkCase& each : list.decided) all.push_back(&each);
  std::vector<std::string> references;
  for (const LinkCase* each : all) references.push_back(each->reference);
  references = shown_references(references);
  for (std::size_t i = 0; i < all.size(); ++i) all[i]->reference = references[i];
  return list;
}

/// The days between which a pair must have come up.
struct Between {
  std::optional<Day> after;
  std::optional<Day> until;

  bool holds(const LinkCase& shown) const {
    if (!shown.now.seen) return false;
    const Day on = shown.now.seen->on;
    return (!after || on > *after) && (!until || on <= *until);
  }
};

std::variant<Between, NotThere> between(const Book& book, const CompareRequest& request) {
  Between days;
  for (const auto& [word, day] :
       {std::pair(&request.from, &days.after), std::pair(&request.to, &days.until)}) {
    if (word->empty()) continue;
    const auto found = find_capture(book, request.shop, *word);
    if (const auto* missing = std::get_if<NotThere>(&found)) return *missing;
    *day = std::get<CaptureInfo>(found).on;
  }
  return days;
}

/// The shops that a command is about, each read when it is needed.
class Desk {
 public:
  Desk(Book& book, const std::string& shop) : book_(book) {
    if (!shop.empty()) {
      slugs_ = {shop};
      return;
    }
    for (const auto& record : book.shops()) slugs_.push_back(record.shop.slug);
  }

  /// What a reference means.
  struct Found {
    ShopLines* lines = nullptr;
    Pair pair;
  };
  std::variant<Found, NotThere> find(const std::string& word, bool decided_only) {
    const std::string typed = typed_reference(word);
    std::vector<Found> found;
    std::vector<std::string> all;
    for (const auto& slug : slugs_) {
      for (Pair& pair : pairs(slug, decided_only)) {
        all.push_back(pair.shown.reference.substr(0, kReferenceSigns));
        if (typed.empty() || !pair.shown.reference.starts_with(typed)) continue;
        found.push_back({&lines(slug), std::move(pair)});
      }
    }
    if (found.size() == 1) return std::move(found.front());
    if (found.empty()) return no_reference(word, all, decided_only);
    return NotThere{
        fmt::format("\"{}\" begins {} references; type more signs, as rangebook links shows them.",
                    word, found.size())};
  }

 private:
  std::vector<Pair> pairs(const std::string& slug, bool decided_only) {
    auto all = decided_pairs(lines(slug));
    if (decided_only) return all;
    for (Pair& pair : waiting_pairs(lines(slug))) all.push_back(std::move(pair));
    return all;
  }

  ShopLines& lines(const std::string& slug) {
    auto& lines = shops_[slug];
    if (!lines) lines = std::make_unique<ShopLines>(book_, slug);
    return *lines;
  }

  NotThere no_reference(const std::string& word, const std::vector<std::string>& all,
                        bool decided_only) const {
    return {fmt::format("No pair{} has the reference \"{}\".{} See: rangebook links {}{}",
                        decided_only ? " you decided about" : "", word, did_you_mean(word, all),
                        slugs_.size() == 1 ? slugs_.front() : "SHOP",
                        decided_only ? " --decided" : "")};
  }

  Book& book_;
  std::vector<std::string> slugs_;
  std::map<std::string, std::unique_ptr<ShopLines>> shops_;
};

/// Works out what a yes or no to a pair comes to. Nothing is kept yet.
std::variant<Settled, NotThere> settle(ShopLines& lines, Pair& pair, bool same) {
  pair.about.same = same;
  const std::string objection = objection_to(lines, pair.about);
  if (!objection.empty()) return NotThere{objection};
  lines.add_decision(pair.about);
  Settled settled{pair.shown, pair.shown.same};
  settled.about.same = same;
  settled.about.reference.resize(kReferenceSigns);
  return settled;
}

/// Decisions on their way into the book.
struct Decided {
  std::vector<Settled> settled;
  std::vector<KeptDecision> kept;

  void add(Settled done, const Pair& pair) {
    if (done.was != done.about.same) {
      kept.push_back({0, pair.about, pair.shown.score, pair.shown.sentence});
    }
    settled.push_back(std::move(done));
  }
};

std::variant<SightingAt, NotThere> one_line(ShopLines& lines, const std::string& word) {
  auto found = find_lines(lines, word);
  if (auto* missing = std::get_if<NotThere>(&found)) return std::move(*missing);
  const auto& matches = std::get<LineMatches>(found);
  if (matches.size() > 1) return too_many(lines, word, matches);
  return matches.front();
}

/// The pair as it was decided or asked about before, or as it is.
Pair pair_of(ShopLines& lines, SightingAt a, SightingAt b) {
  if (b < a) std::swap(a, b);
  FoundLink link;
  link.from = a;
  link.to = b;
  link.score = 0;
  Pair pair = pair_of(lines, link);
  for (auto* known : {+[](ShopLines& of) { return decided_pairs(of); },
                      +[](ShopLines& of) { return waiting_pairs(of); }}) {
    for (Pair& other : known(lines)) {
      if (same_pair(other.about, pair.about)) return std::move(other);
    }
  }
  return pair;
}

std::string one_number_text(const LineGlimpse& line) {
  return fmt::format(
      "Both are {}: the book keeps one line under that {}. Name the two lines by different codes.",
      line.code.empty() ? "\"" + line.name + "\"" : line.code, line.code.empty() ? "name" : "code");
}

}  // namespace

std::variant<LinkList, NotThere> list_links(const Book& book, const CompareRequest& request) {
  const auto any = find_capture(book, request.shop, "");
  if (const auto* missing = std::get_if<NotThere>(&any)) return *missing;
  const auto days = between(book, request);
  if (const auto* missing = std::get_if<NotThere>(&days)) return *missing;
  ShopLines lines(book, request.shop);
  auto waiting = waiting_pairs(lines);
  std::erase_if(waiting,
                [&](const Pair& pair) { return !std::get<Between>(days).holds(pair.shown); });
  return shown_list(request.shop, std::move(waiting), decided_pairs(lines));
}

std::size_t links_waiting(const Book& book, const std::string& shop) {
  return ShopLines(book, shop).identities().ask.size();
}

LinkList list_links(ShopLines& lines) {
  return shown_list(lines.roll().shop.slug, waiting_pairs(lines), decided_pairs(lines));
}

SettledOrNot settle_links(Book& book, const std::string& shop,
                          const std::vector<std::string>& references, bool same) {
  Desk desk(book, shop);
  Decided decided;
  for (const auto& reference : references) {
    auto found = desk.find(reference, false);
    if (auto* missing = std::get_if<NotThere>(&found)) return std::move(*missing);
    auto& [lines, pair] = std::get<Desk::Found>(found);
    auto done = settle(*lines, pair, same);
    if (auto* refused = std::get_if<NotThere>(&done)) return std::move(*refused);
    decided.add(std::move(std::get<Settled>(done)), pair);
  }
  keep_decisions(book, decided.kept);
  return decided.settled;
}

SettledOrNot settle_lines(Book& book, const TwoLines& words, bool same) {
  const auto any = find_capture(book, words.shop, "");
  if (const auto* missing = std::get_if<NotThere>(&any)) return *missing;
  ShopLines lines(book, words.shop);
  std::vector<SightingAt> ends;
  for (const auto* word : {&words.a, &words.b}) {
    auto found = one_line(lines, *word);
    if (auto* missing = std::get_if<NotThere>(&found)) return std::move(*missing);
    ends.push_back(std::get<SightingAt>(found));
  }
  Pair pair = pair_of(lines, ends[0], ends[1]);
  if (pair.about.a == pair.about.b && pair.about.a_on == pair.about.b_on) {
    return NotThere{one_number_text(pair.shown.then)};
  }
  auto done = settle(lines, pair, same);
  if (auto* refused = std::get_if<NotThere>(&done)) return std::move(*refused);
  Decided decided;
  decided.add(std::move(std::get<Settled>(done)), pair);
  keep_decisions(book, decided.kept);
  return decided.settled;
}

SettledOrNot unsettle_link(Book& book, const std::string& shop, const std::string& reference) {
  const auto newest = newest_decision(book, shop);
  if (!newest) return NotThere{"Nothing was decided yet."};
  ShopLines newest_of(book, newest->shop);
  Desk desk(book, shop);
  Desk::Found found{&newest_of, pair_of(newest_of, newest->decision)};
  if (!reference.empty()) {
    auto named = desk.find(reference, true);
    if (auto* missing = std::get_if<NotThere>(&named)) return std::move(*missing);
    found = std::move(std::get<Desk::Found>(named));
  }
  const auto below = decision_below(book, found.pair.about);
  if (below) {
    const std::string objection = objection_to(*found.lines, below->about);
    if (!objection.empty()) return NotThere{objection};
  }
  drop_decision(book, found.pair.about);
  Settled settled{found.pair.shown, found.pair.shown.same};
  settled.about.same = below ? std::optional(below->about.same) : std::nullopt;
  settled.about.reference.resize(kReferenceSigns);
  return std::vector<Settled>{std::move(settled)};
}

}  // namespace rangebook
