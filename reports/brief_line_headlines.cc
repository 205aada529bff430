// Headlines about lines: which are new, back or gone, and what else changed on those that stayed.
#include <algorithm>

#include "reports/brief_headlines.h"
#include "reports/change_groups.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

constexpr std::size_t kNamed = 4;

std::string_view is_or_are(std::size_t count) { return count == 1 ? " is " : " are "; }
std::string_view was_or_were(std::size_t count) { return count == 1 ? " was " : " were "; }

/// `6 in dresses, 2 in knitwear and 1 elsewhere`.
Phrase categories_phrase(const ChangeList& changes) {
  std::vector<Phrase> items;
  std::size_t rest = 0;
  for (const auto& [category, lines] : lines_by_category(changes)) {
    if (items.size() < kNamed) {
      items.push_back(Phrase{}.count(lines).words(" in "));
      items.back().name(category_words(category));
    } else {
      rest += lines;
    }
  }
  if (rest > 0) items.push_back(Phrase{}.count(rest).words(" elsewhere"));
  return joined(items);
}

/// Up to four names, each with the note of its later (or only) sighting, then a count of the rest.
Phrase names_phrase(const ChangeList& changes, SourceList& sources) {
  std::vector<Phrase> items;
  for (std::size_t i = 0; i < std::min(changes.size(), kNamed); ++i) {
    const Change& change = *changes[i];
    if (!change.line) continue;
    items.push_back(Phrase{}.name(line_words(*change.line)));
    const bool later = change.evidence.after.has_value();
    sources.cite(items.back(), later ? change.evidence.after : change.evidence.before);
  }
  if (changes.size() > kNamed) {
    items.push_back(Phrase{}.count(changes.size() - kNamed).words(" more"));
  }
  return joined(items);
}

void add_new(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const ChangeList changes = of_kinds(set, {ChangeKind::line_new});
  if (changes.empty()) return;
  const std::size_t lines = lines_in(changes);
  Phrase sentence;
  sentence.figure(lines_words(lines)).words(is_or_are(lines)).words("new").note(sources.now());
  sentence.words(": ").append(categories_phrase(changes)).words(".");
  out.push_back({Theme::new_lines, std::move(sentence)});
}

void add_returned(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const ChangeList changes = of_kinds(set, {ChangeKind::line_returned});
  if (changes.empty()) return;
  const std::size_t lines = lines_in(changes);
  Phrase sentence;
  sentence.figure(lines_words(lines)).words(is_or_are(lines)).words("back after being absent in ");
  sentence.name(capture_words(set.from, set.to)).words(": ");
  sentence.append(names_phrase(changes, sources)).words(".");
  out.push_back({Theme::returned, std::move(sentence)});
}

void add_gone(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const ChangeList changes = of_kinds(set, {ChangeKind::line_dropped});
  if (changes.empty()) return;
  const std::size_t lines = lines_in(changes);
  Phrase sentence;
  sentence.figure(lines_words(lines)).words(" of ").name(capture_words(set.from, set.to));
  sentence.words(is_or_are(lines)).words("gone").note(sources.then()).note(sources.now());
  sentence.words(": ").append(categories_phrase(changes)).words(".");
  out.push_back({Theme::gone, std::move(sentence)});
}

/// `2 colours added on 1 line`.
Phrase colours_phrase(const ChangeList& changes, std::string_view what) {
  Phrase phrase;
  phrase.figure(counted(changes.size(), "colour", "colours")).words(was_or_were(changes.size()));
  return phrase.words(what).words(" on ").figure(lines_words(lines_in(changes)));
}

void add_colours(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const ChangeList added = of_kinds(set, {ChangeKind::colour_added});
  const ChangeList dropped = of_kinds(set, {ChangeKind::colour_dropped});
  std::vector<Phrase> items;
  if (!added.empty()) items.push_back(colours_phrase(added, "added"));
  if (!dropped.empty()) items.push_back(colours_phrase(dropped, "taken out"));
  if (items.empty()) return;
  Phrase sentence = joined(items);
  sentence.note(sources.then()).note(sources.now()).words(".");
  out.push_back({Theme::colours, std::move(sentence)});
}

void add_fabric(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const ChangeList changes = of_kinds(set, {ChangeKind::composition_changed});
  if (changes.empty()) return;
  Phrase sentence;
  sentence.words("The stated fabric changed on ").figure(lines_words(lines_in(changes)));
  sentence.words(": ").append(names_phrase(changes, sources)).words(".");
  out.push_back({Theme::fabric, std::move(sentence)});
}

void add_stock(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  const std::size_t sold = lines_in(of_kinds(set, {ChangeKind::stock_out}));
  const std::size_t back = lines_in(of_kinds(set, {ChangeKind::stock_back}));
  if (sold + back == 0) return;
  std::vector<Phrase> items;
  if (sold > 0) {
    items.push_back(Phrase{}.figure(lines_words(sold)).words(is_or_are(sold)).words("sold out"));
  }
  if (back > 0) {
    items.push_back(Phrase{}.figure(lines_words(back)).words(is_or_are(back)));
    items.back().words("back in stock");
  }
  Phrase sentence = joined(items);
  sentence.note(sources.then()).note(sources.now()).words(".");
  out.push_back({Theme::stock, std::move(sentence)});
}

}  // namespace

void add_presence_headlines(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  add_new(out, set, sources);
  add_returned(out, set, sources);
  add_gone(out, set, sources);
}

void add_detail_headlines(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  add_colours(out, set, sources);
  add_fabric(out, set, sources);
  add_stock(out, set, sources);
}

void add_identity_headline(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources) {
  static constexpr std::pair<ChangeKind, std::string_view> kWays[] = {
      {ChangeKind::line_renamed, " with a new name"},
      {ChangeKind::line_recoded, " with a new line code"},
      {ChangeKind::category_moved, " in another category"}};
  std::vector<Phrase> items;
  for (const auto& [kind, words] : kWays) {
    const std::size_t lines = lines_in(of_kinds(set, {kind}));
    if (lines > 0) items.push_back(Phrase{}.figure(lines_words(lines)).words(words));
  }
  if (items.empty()) return;
  Phrase sentence;
  sentence.words("Known again").note(sources.then()).note(sources.now()).words(": ");
  sentence.append(joined(items)).words(".");
  out.push_back({Theme::identity, std::move(sentence)});
}

}  // namespace rangebook
