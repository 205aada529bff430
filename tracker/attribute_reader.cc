// One pass over the words of a text, with the state that cues leave behind.
#include "tracker/attribute_reader.h"

#include <algorithm>
#include <array>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "tracker/attribute_table.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

using Field = AttributeReading::Field;

/// Words between a negation and what it negates: "no front or back pockets".
constexpr std::size_t kNegationReach = 4;
/// Words of the longest term, with some room.
constexpr std::size_t kLongestTerm = 8;

/// What stands between a word and the one before it.
struct Gap {
  bool stop = false;   ///< end of a sentence or list item
  bool comma = false;  ///< also brackets
  bool dash = false;   ///< hyphen, dash or colon
  bool slash = false;
};

struct Word {
  std::string folded;
  std::size_t begin = 0;
  std::size_t end = 0;
  Gap gap;
};

bool is_word_byte(char c) {
  return is_ascii_letter(c) || is_ascii_digit(c) || static_cast<unsigned char>(c) >= 0x80;
}
bool is_plain(char c) { return is_ascii_letter(c) || is_ascii_digit(c); }

void note_sign(char c, bool in_number, Gap& gap) {
  if (std::string_view("!?;\n\r|*").find(c) != std::string_view::npos) gap.stop = true;
  if (c == '.' && !in_number) gap.stop = true;
  if (std::string_view(",()[]").find(c) != std::string_view::npos) gap.comma = true;
  if (c == '-' || c == ':') gap.dash = true;
  if (c == '/') gap.slash = true;
}

/// Bytes from 0x80 on may be signs: folding tells. One raw word may fold to several (`3/4` sign).
void add_words(std::string_view raw, std::size_t begin, Gap& gap, std::vector<Word>& words) {
  const std::string folded = fold_text(raw);
  std::string word;
  const auto close = [&] {
    if (word.empty()) return;
    words.push_back({std::exchange(word, {}), begin, begin + raw.size(), std::exchange(gap, {})});
  };
  for (const char c : folded) {
    if (is_plain(c)) {
      word += c;
      continue;
    }
    close();
    note_sign(c, false, gap);
  }
  close();
}

std::vector<Word> words_of(std::string_view text) {
  std::vector<Word> words;
  Gap gap;
  for (std::size_t at = 0; at < text.size();) {
    if (!is_word_byte(text[at])) {
      const bool in_number = at > 0 && at + 1 < text.size() && is_ascii_digit(text[at - 1]) &&
                             is_ascii_digit(text[at + 1]);
      note_sign(text[at++], in_number, gap);
      continue;
    }
    const std::size_t begin = at;
    while (at < text.size() && is_word_byte(text[at])) ++at;
    add_words(text.substr(begin, at - begin), begin, gap, words);
  }
  return words;
}

/// Nouns that take a second description: "long puff sleeves" are long too.
constexpr std::array<std::string_view, 6> kSleeves{"sleeve", "sleeves", "armel",
                                                   "armeln", "mouw",    "mouwen"};

struct Found {
  AttributeReading reading;
  bool general = false;  ///< gives way to any other value
};

class FieldReader {
 public:
  FieldReader(std::string_view text, Field field, std::vector<Found>& found)
      : text_(text.substr(0, kMaxAttributeBytes)),
        field_(field),
        words_(words_of(text_)),
        found_(found) {
    for (const Word& word : words_) folded_.push_back(word.folded);
  }

  void read() {
    for (at_ = 0; at_ < words_.size();) step();
  }

 private:
  void step() {
    const Gap& gap = words_[at_].gap;
    if (gap.stop) elsewhere_ = false;
    if (gap.stop || gap.comma) reach_ = 0;
    const auto term = term_at_start(clause(at_, kLongestTerm));
    if (elsewhere_ || !term) {
      if (!elsewhere_) read_second_description();
      if (reach_ > 0) --reach_;
      ++at_;
      return;
    }
    if (term->cue) {
      follow(*term);
    } else {
      state(*term);
    }
  }

  /// The words from `from` on that belong together: up to a stop or comma, at most `most`.
  FoldedWords clause(std::size_t from, std::size_t most) const {
    std::size_t end = from + 1;
    while (end < words_.size() && end < from + most && !words_[end].gap.stop &&
           !words_[end].gap.comma) {
      ++end;
    }
    return FoldedWords(folded_).subspan(from, end - from);
  }

  void follow(const AttributeTerm& cue) {
    switch (*cue.cue) {
      case AttributeCue::negation:
      case AttributeCue::instead:
        reach_ = kNegationReach;
        break;
      case AttributeCue::or_word:
        if (just_negated_) reach_ = kNegationReach;
        if (reach_ > 0) --reach_;
        break;
      case AttributeCue::elsewhere:
        elsewhere_ = true;
        break;
      case AttributeCue::ignore:
        reach_ = 0;
        break;
      case AttributeCue::negation_behind:
      case AttributeCue::negation_suffix:
        if (reach_ > 0) --reach_;
        break;
    }
    just_negated_ = false;
    at_ += cue.length;
  }

  void state(const AttributeTerm& term) {
    const std::size_t end = at_ + term.length;
    const bool negated = reach_ > 0 || negated_behind(end);
    reach_ = 0;
    just_negated_ = negated;
    if (!negated) {
      add(term, at_, end);
      add_other_descriptions(term, end);
    } else if (term.attribute == Attribute::pockets) {
      AttributeTerm none;
      none.attribute = Attribute::pockets;
      none.value = "without";
      add(none, negation_begin(), end);
    }
    at_ = end;
  }

  /// `pockets: none`, `button-free`.
  bool negated_behind(std::size_t end) const {
    if (end >= words_.size() || words_[end].gap.stop || words_[end].gap.comma) return false;
    const auto cue = term_at_start(clause(end, kLongestTerm));
    if (!cue || !cue->cue) return false;
    const bool may_be_behind =
        *cue->cue == AttributeCue::negation_behind || *cue->cue == AttributeCue::negation;
    return *cue->cue == AttributeCue::negation_suffix || (may_be_behind && words_[end].gap.dash);
  }

  /// The words of a negation are part of what is quoted.
  std::size_t negation_begin() const {
    std::size_t begin = at_;
    while (begin > 0 && at_ - begin < kNegationReach && !words_[begin].gap.stop) {
      --begin;
      const auto cue = term_at_start(clause(begin, kLongestTerm));
      if (cue && cue->cue && *cue->cue == AttributeCue::negation) return begin;
    }
    return at_;
  }

  bool is_or(std::size_t i) const {
    const auto cue = term_at_start(FoldedWords(folded_).subspan(i, 1));
    return cue && cue->cue == AttributeCue::or_word;
  }

  /// "Long or short sleeves", "manches longues ou courtes", "long puff sleeves".
  void add_other_descriptions(const AttributeTerm& term, std::size_t end) {
    if (term.length < 2) return;
    const std::vector<std::string_view> own(folded_.begin() + std::ptrdiff_t(at_),
                                            folded_.begin() + std::ptrdiff_t(end));
    if (at_ >= 2 && is_or(at_ - 1) && joined(at_ - 1) && joined(at_)) {
      add_variant(own, 0, at_ - 2, at_ - 2, end);
    }
    if (end + 1 < words_.size() && is_or(end) && joined(end) && joined(end + 1)) {
      add_variant(own, own.size() - 1, end + 1, at_, end + 2);
    }
    if (at_ >= 1 && joined(at_)) add_before_noun(at_ - 1, end);
  }

  /// No stop and no comma before word `i`.
  bool joined(std::size_t i) const { return !words_[i].gap.stop && !words_[i].gap.comma; }

  /// The term with one word replaced by word `other`, if that is a value of the same attribute.
  void add_variant(std::vector<std::string_view> term, std::size_t place, std::size_t other,
                   std::size_t begin, std::size_t end) {
    term[place] = folded_[other];
    if (const auto value = value_term(term)) add(*value, begin, end);
  }

  void add_before_noun(std::size_t adjective, std::size_t end) {
    const auto noun = folded_[end - 1];
    if (std::find(kSleeves.begin(), kSleeves.end(), noun) == kSleeves.end()) return;
    const std::array<std::string_view, 2> pair{folded_[adjective], noun};
    if (const auto value = value_term(pair)) add(*value, adjective, end);
  }

  /// "Long cuffed sleeves": the word between is none of ours.
  void read_second_description() {
    if (at_ + 2 >= words_.size() || !joined(at_ + 1) || !joined(at_ + 2) || reach_ > 0) return;
    if (is_or(at_ + 1) || term_at_start(clause(at_ + 1, kLongestTerm))) return;
    add_before_noun(at_, at_ + 3);
  }

  void add(const AttributeTerm& term, std::size_t first, std::size_t end) {
    const std::size_t begin = words_[first].begin;
    const std::size_t stop = words_[end - 1].end;
    found_.push_back({{term.attribute, std::string(term.value), field_, begin, stop,
                       std::string(text_.substr(begin, stop - begin))},
                      term.general});
  }

  std::string_view text_;
  Field field_;
  std::vector<Word> words_;
  std::vector<std::string_view> folded_;
  std::vector<Found>& found_;
  std::size_t at_ = 0;
  std::size_t reach_ = 0;  ///< words that a negation still reaches
  bool just_negated_ = false;
  bool elsewhere_ = false;  ///< until the sentence ends
};

void drop_general(std::vector<Found>& found) {
  const auto has_other = [&found](Attribute attribute) {
    return std::any_of(found.begin(), found.end(), [attribute](const Found& each) {
      return !each.general && each.reading.attribute == attribute;
    });
  };
  std::array<bool, kAttributeCount> drop{};
  for (std::size_t i = 0; i < kAttributeCount; ++i) drop[i] = has_other(Attribute(i));
  std::erase_if(found, [&drop](const Found& each) {
    return each.general && drop[static_cast<std::size_t>(each.reading.attribute)];
  });
}

bool same_statement(const AttributeReading& a, const AttributeReading& b) {
  return std::tie(a.attribute, a.value, a.field) == std::tie(b.attribute, b.value, b.field);
}

}  // namespace

Attributes read_attributes(std::string_view name, std::string_view description) {
  std::vector<Found> found;
  FieldReader(name, Field::name, found).read();
  FieldReader(description, Field::description, found).read();
  drop_general(found);
  Attributes attributes;
  for (Found& each : found) attributes.readings.push_back(std::move(each.reading));
  auto& readings = attributes.readings;
  std::sort(readings.begin(), readings.end());
  readings.erase(std::unique(readings.begin(), readings.end(), same_statement), readings.end());
  return attributes;
}

}  // namespace rangebook
