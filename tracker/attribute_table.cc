// Terms are indexed by their first word; the few that begin with a wildcard are tried one by one.
#include "tracker/attribute_table.h"

#include <algorithm>
#include <unordered_map>
#include <vector>

#include "schema/embedded.h"
#include "schema/error.h"
#include "schema/names.h"

namespace rangebook {
namespace {

constexpr NameTable<AttributeCue, 7> kCueNames{{
    {AttributeCue::negation, "negation"},
    {AttributeCue::negation_behind, "negation-behind"},
    {AttributeCue::negation_suffix, "negation-suffix"},
    {AttributeCue::instead, "instead"},
    {AttributeCue::or_word, "or"},
    {AttributeCue::elsewhere, "elsewhere"},
    {AttributeCue::ignore, "ignore"},
}};

struct Pattern {
  std::vector<std::string_view> words;
  AttributeTerm meaning;
};

bool is_wild(std::string_view word) { return word.starts_with('-') || word.ends_with('-'); }

/// A word of a text against one of the table. English plurals need no row of their own.
bool word_matches(std::string_view word, std::string_view wanted) {
  if (wanted.starts_with('-')) return word.ends_with(wanted.substr(1));
  if (wanted.ends_with('-')) return word.starts_with(wanted.substr(0, wanted.size() - 1));
  if (!word.starts_with(wanted)) return false;
  constexpr std::size_t kShortestPlural = 4;
  const auto rest = word.substr(wanted.size());
  return rest.empty() || (rest == "s" && word.size() >= kShortestPlural);
}

bool pattern_matches(const Pattern& pattern, FoldedWords words) {
  return pattern.words.size() <= words.size() &&
         std::equal(pattern.words.begin(), pattern.words.end(), words.begin(),
                    [](auto wanted, auto word) { return word_matches(word, wanted); });
}

std::vector<std::string_view> parts_of(std::string_view text, char sign) {
  std::vector<std::string_view> parts;
  while (!text.empty()) {
    const auto end = std::min(text.find(sign), text.size());
    if (end > 0) parts.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return parts;
}

class Terms {
 public:
  Terms() {
    for (const auto& row : table_rows("tables/attributes.tsv")) {
      AttributeTerm meaning;
      const auto attribute = parse_attribute(row.at(0));
      if (!attribute) throw Error("tables/attributes.tsv has a bad row: " + std::string(row[0]));
      meaning.attribute = *attribute;
      meaning.value = row.at(1);
      meaning.general = row.at(2) == "general";
      add_languages(row, 3, meaning);
    }
    for (const auto& row : table_rows("tables/attribute_cues.tsv")) {
      AttributeTerm meaning;
      meaning.cue = value_of(kCueNames, row.at(0));
      if (!meaning.cue)
        throw Error("tables/attribute_cues.tsv has a bad row: " + std::string(row[0]));
      add_languages(row, 1, meaning);
    }
  }

  /// Calls `visit` with every pattern that the first words are.
  template <typename Visit>
  void each_match(FoldedWords words, Visit visit) const {
    if (words.empty()) return;
    const auto by_first = [&](const std::string& first) {
      const auto found = by_word_.find(first);
      if (found == by_word_.end()) return;
      for (const auto& pattern : found->second) {
        if (pattern_matches(pattern, words)) visit(pattern.meaning);
      }
    };
    const std::string first(words.front());
    by_first(first);
    if (first.ends_with('s')) by_first(first.substr(0, first.size() - 1));
    for (const auto& pattern : wild_) {
      if (pattern_matches(pattern, words)) visit(pattern.meaning);
    }
  }

 private:
  void add_languages(const std::vector<std::string_view>& row, std::size_t from,
                     const AttributeTerm& meaning) {
    for (std::size_t column = from; column < row.size(); ++column) {
      for (const auto text : parts_of(row[column], ';')) add(text, meaning);
    }
  }

  void add(std::string_view text, AttributeTerm meaning) {
    Pattern pattern{parts_of(text, ' '), meaning};
    if (pattern.words.empty()) return;
    pattern.meaning.length = pattern.words.size();
    auto& home =
        is_wild(pattern.words.front()) ? wild_ : by_word_[std::string(pattern.words.front())];
    home.push_back(std::move(pattern));
  }

  std::unordered_map<std::string, std::vector<Pattern>> by_word_;
  std::vector<Pattern> wild_;
};

const Terms& terms() {
  static const Terms table;
  return table;
}

}  // namespace

std::optional<AttributeTerm> term_at_start(FoldedWords words) {
  std::optional<AttributeTerm> best;
  terms().each_match(words, [&best](const AttributeTerm& term) {
    const bool value_first = best && term.length == best->length && best->cue && !term.cue;
    if (!best || term.length > best->length || value_first) best = term;
  });
  return best;
}

std::optional<AttributeTerm> value_term(FoldedWords words) {
  std::optional<AttributeTerm> found;
  terms().each_match(words, [&](const AttributeTerm& term) {
    if (!found && !term.cue && term.length == words.size()) found = term;
  });
  return found;
}

}  // namespace rangebook
