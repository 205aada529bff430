// The seam for other languages: a table of the texts of reports and what they are called elsewhere.
// Reports are composed in English; what is not in the table stays English. Names, figures and notes
// are carried over untouched, so no figure can change with the language.
#pragma once

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "reports/phrase.h"

namespace rangebook {

/// Texts of reports in another language, by their English.
class PhraseBook {
 public:
  PhraseBook() = default;
  /// Reads UTF-8 text of two columns with a tab between them. The first line is `english` and the
  /// BCP 47 tag of the other language; a line that begins with `#` is a remark; a text without a
  /// translation stays English. `{}` stands for a name or figure: in the translation the next one,
  /// `{2}` the second. Faults, each with its line, are added to `faults`; the other lines hold.
  static PhraseBook read(std::string_view table, std::vector<std::string>& faults);

  /// `de`; empty for English.
  const std::string& language() const { return language_; }
  /// The translation of a text without slots, or the text itself.
  std::string text(std::string_view english) const;
  /// Likewise with its slots filled: `filled("{}: {} more", {caption, "12"})`.
  std::string filled(std::string_view pattern, const std::vector<std::string>& slots) const;
  /// The phrase in the other language: as a whole where the table has its pattern, else each of
  /// its texts by itself.
  Phrase phrase(const Phrase& english) const;

 private:
  void add(std::string_view line, std::size_t number, std::vector<std::string>& faults);
  const std::string* found(const std::string& pattern) const;

  std::string language_;
  std::unordered_map<std::string, std::string> texts_;
};

/// What a phrase is found by: its own words with `{}` for each run of names, figures and notes.
std::string pattern_of(const Phrase& phrase);

struct ReportPage;
/// The same page in the words of a table.
ReportPage translated(ReportPage page, const PhraseBook& book);
/// All texts of a page, each once in the order of the page, as a table to be filled in.
std::string phrase_table(ReportPage page);

}  // namespace rangebook
