// One sentence of a policy (or a part of one that speaks of one thing), ready for the rules.
#pragma once

#include <algorithm>
#include <cstdint>
#include <initializer_list>
#include <string>
#include <utility>
#include <vector>

#include "importers/policy_lines.h"
#include "importers/policy_tokens.h"
#include "importers/policy_words.h"

namespace rangebook {

struct PolicySentence {
  std::string text;
  std::uint32_t byte = 0;  ///< in the document
  PolicyLineKind kind = PolicyLineKind::text;
  std::vector<PolicyToken> tokens;
  std::vector<PolicyMark> marks;

  bool question() const { return text.ends_with('?'); }
  const PolicyMark* first(PolicyRole role) const {
    const auto at = std::find_if(marks.begin(), marks.end(),
                                 [&](const PolicyMark& one) { return one.role == role; });
    return at == marks.end() ? nullptr : &*at;
  }
  bool has(PolicyRole role) const { return first(role) != nullptr; }
  template <typename... Roles>
  bool has_any(Roles... roles) const {
    return (has(roles) || ...);
  }
  std::string_view word(std::size_t at) const {
    return at < tokens.size() ? std::string_view(tokens[at].word) : std::string_view{};
  }
};

/// The part of a sentence in tokens [begin, end), with the whole sentence as its text.
inline PolicySentence part_of(const PolicySentence& whole, std::uint32_t begin, std::uint32_t end) {
  PolicySentence part;
  part.text = whole.text;
  part.byte = whole.byte;
  part.kind = whole.kind;
  part.tokens.assign(whole.tokens.begin() + begin, whole.tokens.begin() + end);
  for (PolicyMark mark : whole.marks) {
    if (mark.begin < begin || mark.end > end) continue;
    mark.begin -= begin;
    mark.end -= begin;
    part.marks.push_back(mark);
  }
  return part;
}

/// True for a sentence that reads like Dutch: its "en" and "of" are words of other languages too.
inline bool reads_dutch(const PolicySentence& s) {
  static constexpr std::string_view kDutch[] = {
      "de",   "het", "een",   "je",   "wij",    "voor", "niet", "van",  "bij",   "uw",
      "onze", "kan", "wordt", "naar", "worden", "geen", "zijn", "deze", "gratis"};
  static constexpr std::string_view kOthers[] = {
      "le",  "la",  "les",   "et",  "vous", "des", "au",   "the", "your", "and",
      "our", "to",  "votre", "nos", "est",  "for", "pour", "el",  "los",  "las",
      "por", "con", "una",   "del", "que",  "tus", "tu",   "para"};
  int score = 0;
  for (const auto& token : s.tokens) {
    score +=
        std::find(std::begin(kDutch), std::end(kDutch), token.word) != std::end(kDutch) ? 1 : 0;
    score -=
        std::find(std::begin(kOthers), std::end(kOthers), token.word) != std::end(kOthers) ? 1 : 0;
  }
  return score > 0;
}

/// The words that join two statements.
inline bool is_joint(const PolicySentence& s, std::size_t at) {
  const std::string_view word = s.word(at);
  if (word == "en" || word == "of") return reads_dutch(s);
  static constexpr std::string_view kJoints[] = {
      "and", "or",   "but",      "while", "whereas", "und",     "oder",  "aber",   "et",
      "ou",  "mais", "en",       "of",    "maar",    "however", "sowie", "tandis", "alternatively",
      "y",   "pero", "mientras", "o",     "puis",    "then",    "dann",  "bzw"};
  return std::find(std::begin(kJoints), std::end(kJoints), word) != std::end(kJoints);
}

inline bool is_stop(std::string_view word) {
  return word == ";" || word == "," || word == "|" || word == "(" || word == ")" || word == ":" ||
         word == "." || word == "!" || word == "?";
}

/// The parts of a sentence between its stops and joints.
inline std::vector<PolicySentence> parts_of(const PolicySentence& s) {
  std::vector<PolicySentence> parts;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  std::uint32_t begin = 0;
  for (std::uint32_t at = 0; at <= size; ++at) {
    const bool stop = at == size || is_stop(s.word(at)) || is_joint(s, at);
    const bool inside =
        at < size && std::any_of(s.marks.begin(), s.marks.end(),
                                 [&](const auto& m) { return m.begin <= at && at < m.end; });
    if (!stop || inside) continue;
    if (at > begin) parts.push_back(part_of(s, begin, at));
    begin = at + 1;
  }
  return parts;
}

/// The last mark of the role that ends at or before a token; nothing if there is none.
inline const PolicyMark* last_before(const PolicySentence& s, PolicyRole role, std::uint32_t at) {
  const PolicyMark* last = nullptr;
  for (const auto& mark : s.marks) {
    if (mark.role == role && mark.end <= at) last = &mark;
  }
  return last;
}

inline const PolicyMark* next_after(const PolicySentence& s, PolicyRole role, std::uint32_t at) {
  for (const auto& mark : s.marks) {
    if (mark.role == role && mark.begin >= at) return &mark;
  }
  return nullptr;
}

inline bool between(const PolicySentence& s, PolicyRole role, std::uint32_t begin,
                    std::uint32_t end) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == role && one.begin >= begin && one.end <= end;
  });
}

inline bool word_between(const PolicySentence& s, std::uint32_t begin, std::uint32_t end,
                         std::initializer_list<std::string_view> words) {
  for (auto at = begin; at < end && at < s.tokens.size(); ++at) {
    if (std::find(words.begin(), words.end(), s.word(at)) != words.end()) return true;
  }
  return false;
}

/// "More than 30 days late", but not "no more than": a time beyond which something else holds.
inline bool is_beyond(const PolicySentence& s, const PolicyMark& span) {
  const auto begin = span.begin < 3 ? 0 : span.begin - 3;
  const auto* over = last_before(s, PolicyRole::over, span.begin);
  const bool more = (over != nullptr && over->end + 1 >= span.begin) ||
                    word_between(s, begin, span.begin, {"longer", "langer", "longtemps"});
  return more && !word_between(s, begin < 2 ? 0 : begin - 2, span.begin,
                               {"no", "not", "nicht", "pas", "niet"});
}

/// "If you return it after 14 days but within 30": of what comes too late.
inline bool is_late(const PolicySentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == PolicyRole::span && one.begin > 0 &&
           word_between(s, one.begin - 1, one.begin, {"after", "apres", "despues", "na", "nach"});
  });
}

/// A word that is neither part of a mark nor plain.
inline bool is_unread(const PolicySentence& s, std::uint32_t at) {
  const std::string_view word = s.word(at);
  if (word.size() < 2 || word[0] < 'a' || word[0] > 'z' || is_plain_word(word)) return false;
  if (number_at(s.tokens, at)) return false;
  return std::none_of(s.marks.begin(), s.marks.end(),
                      [&](const PolicyMark& one) { return one.begin <= at && at < one.end; });
}

/// How many words are neither part of a mark nor plain: what the sentence says beside what was
/// understood.
inline std::size_t unread_words(const PolicySentence& s) {
  std::size_t count = 0;
  for (std::uint32_t at = 0; at < s.tokens.size(); ++at) count += is_unread(s, at) ? 1 : 0;
  return count;
}

/// A sentence that takes part of it back.
inline bool says_but(const PolicySentence& s) {
  return word_between(
      s, 0, static_cast<std::uint32_t>(s.tokens.size()),
      {"but", "aber", "mais", "maar", "however", "although", "jedoch", "toutefois"});
}

/// True for a sentence with a number that is neither part of a mark nor an hour: "within 5 days,
/// never more than 10".
inline bool has_bare_number(const PolicySentence& s) {
  for (std::uint32_t at = 3; at < s.tokens.size(); ++at) {  // a clause may be numbered
    const std::string_view word = s.word(at);
    const bool digits = word[0] >= '0' && word[0] <= '9' && word.size() <= 3;
    const bool named = word_between(
        s, at, at + 1, {"two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"});
    if (!digits && !named) continue;
    const bool marked = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
      return one.begin <= at && at < one.end;
    });
    const bool hour = s.word(at + 1) == ":" || s.word(at - 1) == ":" || s.word(at - 1) == "." ||
                      (s.word(at + 1) == "." && s.word(at + 2).size() == 2) ||
                      word_between(s, at + 1, at + 4,
                                   {"pm", "am", "uhr", "uur", "h", "o'clock", "noon", "day", "days",
                                    "heures", "hours", "hour", "stunden", "uren"});
    if (!marked && !hour) return true;
  }
  return false;
}

inline constexpr std::string_view kBareNumber = "A number beside it was not understood.";
inline constexpr std::string_view kUnreadWords = "Parts of the sentence were not understood.";

/// The words around a mark up to the next stops.
inline PolicySentence clause_around(const PolicySentence& s, const PolicyMark& mark) {
  std::uint32_t begin = mark.begin;
  std::uint32_t end = mark.end;
  while (begin > 0 && !is_stop(s.word(begin - 1))) --begin;
  while (end < s.tokens.size() && !is_stop(s.word(end))) ++end;
  return part_of(s, begin, end);
}

}  // namespace rangebook
