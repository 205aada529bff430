// Headlines about sizes and prices; those about lines stand in brief_line_headlines.cc.
#include "reports/brief_headlines.h"

#include <fmt/format.h>

#include <algorithm>

#include "reports/brief_terms.h"
#include "reports/change_groups.h"
#include "reports/share_words.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

/// How many categories a sentence names before it counts the rest.
constexpr std::size_t kNamed = 3;

std::size_t steps_changed(const Change& change) {
  const auto* before = fact_of<SizeFact>(change.before);
  const auto* after = fact_of<SizeFact>(change.after);
  const std::size_t then = before != nullptr ? before->labels.size() : 0;
  const std::size_t now = after != nullptr ? after->labels.size() : 0;
  return then > now ? then - now : now - then;
}

/// Changes of categories; the whole range only where no category stands for itself.
ChangeList categories_first(ChangeList changes) {
  const auto whole = std::stable_partition(
      changes.begin(), changes.end(), [](const Change* each) { return each->category != "all"; });
  if (whole != changes.begin()) changes.erase(whole, changes.end());
  return changes;
}

Phrase cited(const Change& change, bool after, SourceList& sources) {
  Phrase phrase = side_phrase(change.kind, after ? change.after : change.before);
  if (phrase.empty()) phrase.figure("none");
  sources.cite(phrase, after ? change.evidence.after : change.evidence.before);
  return phrase;
}

const SizeReach* reach_of(const CategorySide& side, const SizeFact& fact) {
  for (const SizeReach& reach : side.reach) {
    if (reach.system == fact.system && reach.fit == fact.fit) return &reach;
  }
  return nullptr;
}

/// `Size 24 is offered in 4 of 24 lines.`: a range says little when one line carries its end.
void add_end_of_range(Phrase& sentence, const ChangeSet& set, const Change& change,
                      SourceList& sources) {
  const auto* fact = fact_of<SizeFact>(change.after);
  const auto* summary = summary_of(set, change.category);
  const auto* reach =
      fact != nullptr && summary != nullptr ? reach_of(summary->after, *fact) : nullptr;
  if (reach == nullptr || reach->steps.empty()) return;
  const auto* before = fact_of<SizeFact>(change.before);
  const bool upwards = before == nullptr || before->max != fact->max;
  const ReachStep& end = upwards ? reach->steps.back() : reach->steps.front();
  if (end.size.label != (upwards ? fact->max : fact->min)) return;
  sentence.words(" Size ").figure(end.size.label).words(" is offered in ");
  sentence.figure(fmt::format("{} of {}", end.offering, lines_words(reach->lines)));
  sentence.figure(interval_note(end.offering_interval));
  sources.cite(sentence, change.evidence.after);
  sentence.words(".");
}

/// `No longer offered: 6 and 16.`
void add_sizes_gone(Phrase& sentence, const Change& change) {
  const auto* before = fact_of<SizeFact>(change.before);
  const auto* after = fact_of<SizeFact>(change.after);
  if (before == nullptr || after == nullptr) return;
  std::vector<Phrase> gone;
  for (const auto& label : before->labels) {
    if (std::find(after->labels.begin(), after->labels.end(), label) == after->labels.end()) {
      gone.push_back(Phrase{}.figure(label));
    }
  }
  if (!gone.empty()) sentence.words(" No longer offered: ").append(joined(gone)).words(".");
}

/// `Wider or narrower too: tops (UK 6-20, was UK 6-16) and 2 more categories.`
void add_other_categories(Phrase& sentence, std::string_view lead, const ChangeList& changes,
                          SourceList& sources) {
  if (changes.size() < 2) return;
  std::vector<Phrase> items;
  for (std::size_t i = 1; i < std::min(changes.size(), kNamed); ++i) {
    Phrase item;
    item.name(category_words(changes[i]->category)).words(" (");
    item.append(cited(*changes[i], true, sources)).words(", was ");
    items.push_back(item.append(cited(*changes[i], false, sources)).words(")"));
  }
  if (changes.size() > kNamed) {
    const std::string rest = counted(changes.size() - kNamed, "more category", "more categories");
    items.push_back(Phrase{}.figure(rest));
  }
  sentence.words(lead).append(joined(items)).words(".");
}

void add_reach(std::vector<Headline>& out, const ChangeSet& set, ChangeKind kind,
               SourceList& sources) {
  ChangeList changes = categories_first(of_kinds(set, {kind}));
  if (changes.empty()) return;
  std::stable_sort(changes.begin(), changes.end(), [](const Change* a, const Change* b) {
    return steps_changed(*a) > steps_changed(*b);
  });
  const Change& first = *changes.front();
  Phrase sentence;
  sentence.words("Sizes in ").name(category_words(first.category)).words(" now run ");
  sentence.append(cited(first, true, sources));
  sentence.words("; in ").name(capture_words(set.from, set.to)).words(" they ran ");
  sentence.append(cited(first, false, sources)).words(".");
  const bool wider = kind == ChangeKind::reach_widened;
  if (wider) add_end_of_range(sentence, set, first, sources);
  if (!wider) add_sizes_gone(sentence, first);
  add_other_categories(sentence, wider ? " Wider too: " : " Narrower too: ", changes, sources);
  out.push_back({Theme::sizes, std::move(sentence)});
}

void add_line_sizes(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  static constexpr std::pair<ChangeKind, std::string_view> kWays[] = {
      {ChangeKind::sizes_widened, "wider on "},
      {ChangeKind::sizes_narrowed, "narrower on "},
      {ChangeKind::size_gap_filled, "a size between filled in on "},
      {ChangeKind::size_gap_opened, "a size between gone on "},
      {ChangeKind::fit_range_added, "a fit added on "},
      {ChangeKind::fit_range_dropped, "a fit gone on "}};
  std::vector<Phrase> items;
  for (const auto& [kind, words] : kWays) {
    const std::size_t lines = lines_in(of_kinds(set, {kind}));
    if (lines > 0) items.push_back(Phrase{}.words(words).figure(lines_words(lines)));
  }
  if (items.empty()) return;
  Phrase sentence;
  sentence.words("Sizes line by line: ").append(joined(items));
  sentence.note(sources.then()).note(sources.now()).words(".");
  out.push_back({Theme::sizes, std::move(sentence)});
}

std::string four_places(std::int64_t millionths) {
  return fmt::format("{}.{:04}", (millionths + 50) / 1'000'000,
                     (millionths + 50) % 1'000'000 / 100);
}

/// The category whose like-for-like price moved most, where categories differ at all.
void add_category_most_moved(Phrase& sentence, const ChangeList& indices) {
  const auto size = [](const Change* each) {
    const auto* fact = fact_of<IndexFact>(each->after);
    return fact == nullptr ? 0 : std::abs(fact->jevons - 1'000'000);
  };
  const Change* most = nullptr;
  for (const Change* each : indices) {
    if (each->category == "all" || size(each) == 0) continue;
    if (most == nullptr || size(each) > size(most)) most = each;
  }
  if (most == nullptr) return;
  sentence.words(" The largest move is in ").name(category_words(most->category)).words(": ");
  sentence.append(side_phrase(most->kind, most->after)).words(".");
}

void add_index(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const ChangeList indices = of_kinds(set, {ChangeKind::price_index});
  for (const Change* each : indices) {
    const auto* fact = fact_of<IndexFact>(each->after);
    if (fact == nullptr || each->category != "all") continue;
    Phrase sentence;
    sentence.words("Like for like, full prices of the ").figure(lines_words(fact->lines));
    sentence.words(" priced in both captures are ").figure(index_words(fact->jevons));
    sentence.words(" (Jevons index ").figure(four_places(fact->jevons)).words(")");
    sources.cite(sentence, each->evidence.before);
    sources.cite(sentence, each->evidence.after);
    sentence.words(".");
    add_category_most_moved(sentence, indices);
    out.push_back({Theme::prices, std::move(sentence)});
  }
}

void add_price_moves(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const std::size_t up = lines_in(of_kinds(set, {ChangeKind::price_up}));
  const std::size_t down = lines_in(of_kinds(set, {ChangeKind::price_down}));
  ChangeList moves = of_kinds(set, {ChangeKind::price_up, ChangeKind::price_down});
  if (moves.empty()) return;
  sort_by_move(moves);
  const Change& largest = *moves.front();
  Phrase sentence;
  sentence.words("The full price is up on ").figure(up > 0 ? lines_words(up) : "none");
  sentence.words(" and down on ").figure(down > 0 ? lines_words(down) : "none");
  sentence.words("; the largest move is ");
  if (largest.line) sentence.name(line_words(*largest.line)).words(", ");
  sentence.append(cited(largest, false, sources)).words(" to ");
  sentence.append(cited(largest, true, sources));
  if (const auto move = price_move(largest)) {
    sentence.words(" (").share(*move, true).words(")");
  }
  out.push_back({Theme::prices, std::move(sentence.words("."))});
}

void add_entry_prices(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  ChangeList changes = categories_first(of_kinds(set, {ChangeKind::entry_price_changed}));
  if (changes.empty()) return;
  sort_by_move(changes);
  const Change& first = *changes.front();
  Phrase sentence;
  sentence.words("The entry price in ").name(category_words(first.category)).words(" is now ");
  sentence.append(cited(first, true, sources)).words("; in ");
  sentence.name(capture_words(set.from, set.to)).words(" it was ");
  sentence.append(cited(first, false, sources)).words(".");
  add_other_categories(sentence, " Changed too: ", changes, sources);
  out.push_back({Theme::entry_prices, std::move(sentence)});
}

std::uint32_t marked_down(const CategorySide& side) {
  std::uint32_t lines = 0;
  for (const PriceLadder& prices : side.prices) lines += prices.marked_down;
  return lines;
}

void add_markdowns(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const auto* all = summary_of(set, "all");
  if (all == nullptr) return;
  const std::uint32_t then = marked_down(all->before);
  const std::uint32_t now = marked_down(all->after);
  if (then == now && of_kinds(set, {ChangeKind::marked_down, ChangeKind::markdown_changed,
                                    ChangeKind::markdown_ended})
                         .empty()) {
    return;
  }
  Phrase sentence;
  sentence.figure(fmt::format("{} of {}", now > 0 ? std::to_string(now) : "None",
                              lines_words(all->after.lines)));
  sentence.words(now < 2 ? " is marked down" : " are marked down").note(sources.now());
  sentence.words("; in ").name(capture_words(set.from, set.to)).words(" it was ");
  sentence.figure(fmt::format("{} of {}", then, all->before.lines)).note(sources.then());
  out.push_back({Theme::markdowns, std::move(sentence.words("."))});
}

/// A shop that recoded its range makes every code in a stylist's notes stale: that is news.
bool is_mostly_recoded(const ChangeSet& set) {
  const std::size_t recoded = lines_in(of_kinds(set, {ChangeKind::line_recoded}));
  return recoded * 2 > set.reconciliation.carried;
}

Headline nothing_changed(const ChangeSet& set, SourceList& sources) {
  Phrase sentence;
  sentence.words("Nothing changed on the ").figure(lines_words(set.reconciliation.carried));
  sentence.words(" that both captures hold").note(sources.then()).note(sources.now()).words(".");
  return {Theme::nothing, std::move(sentence)};
}

}  // namespace

std::vector<Headline> brief_headlines(const ChangeSet& set, SourceList& sources) {
  std::vector<Headline> out;
  add_reach(out, set, ChangeKind::reach_widened, sources);
  add_reach(out, set, ChangeKind::reach_narrowed, sources);
  const bool by_category = !out.empty();
  if (!by_category) add_line_sizes(out, set, sources);
  add_terms_headline(out, set, sources);
  add_index(out, set, sources);
  add_entry_prices(out, set, sources);
  const bool most_recoded = is_mostly_recoded(set);
  if (most_recoded) add_identity_headline(out, set, sources);
  add_presence_headlines(out, set, sources);
  if (by_category) add_line_sizes(out, set, sources);
  add_price_moves(out, set, sources);
  add_markdowns(out, set, sources);
  add_detail_headlines(out, set, sources);
  if (!most_recoded) add_identity_headline(out, set, sources);
  if (out.empty()) out.push_back(nothing_changed(set, sources));
  return out;
}

}  // namespace rangebook
