// Words and sentences.
#include "importers/policy_tokens.h"

#include <algorithm>
#include <array>

#include "importers/byte_search.h"

namespace rangebook {
namespace {

struct Sign {
  std::string_view text;  ///< folded; empty: not known
  std::size_t bytes = 1;
};

constexpr auto kLatin = std::to_array<std::string_view>(
    {"a", "a", "a", "a", "a", "a", "ae", "c", "e", "e", "e", "e", "i", "i", "i",  "i",
     "d", "n", "o", "o", "o", "o", "o",  "x", "o", "u", "u", "u", "u", "y", "th", "ss"});

/// One character without accent and case: letters of western Europe, quotes, dashes, blanks.
Sign folded_sign(std::string_view text) {
  const auto byte = static_cast<unsigned char>(text[0]);
  if (byte < 0x80) return {{}, 1};
  const auto next = text.size() > 1 ? static_cast<unsigned char>(text[1]) : 0U;
  if (byte == 0xC3 && next >= 0x80 && next < 0xC0) return {kLatin[next & 0x1FU], 2};
  if (byte == 0xC5 && (next == 0x92 || next == 0x93)) return {"oe", 2};
  if (byte == 0xC2) return {next == 0xA0 ? " " : std::string_view{}, 2};
  if (text.starts_with("\u2019") || text.starts_with("\u2018")) return {"'", 3};
  for (const std::string_view dash : {"\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212"}) {
    if (text.starts_with(dash)) return {"-", 3};
  }
  for (const std::string_view blank : {"\u202f", "\u2009", "\u2007"}) {
    if (text.starts_with(blank)) return {" ", 3};
  }
  return {{}, byte >= 0xF0 ? 4U : byte >= 0xE0 ? 3U : 2U};
}

/// A text as folded bytes, each with its place in the original.
struct Folded {
  std::string text;
  std::vector<std::uint32_t> place;  ///< one more than `text` has

  explicit Folded(std::string_view original) {
    for (std::size_t at = 0; at < original.size();) {
      const Sign sign = folded_sign(original.substr(at));
      const auto bytes = std::min(sign.bytes, original.size() - at);
      if (sign.text.empty() && bytes == 1) {
        add(ascii_lower(original[at]), at);
      } else if (sign.text.empty()) {
        add('\x01', at);
      }
      for (const char c : sign.text) add(c, at);
      at += bytes;
    }
    place.push_back(static_cast<std::uint32_t>(original.size()));
  }
  void add(char c, std::size_t at) {
    text += c;
    place.push_back(static_cast<std::uint32_t>(at));
  }
};

bool is_word_sign(char c) { return is_ascii_letter(c); }

bool is_english_ending(std::string_view word) {
  return word == "t" || word == "s" || word == "ll" || word == "re" || word == "ve" ||
         word == "d" || word == "m";
}

constexpr auto kAbbreviations = std::to_array<std::string_view>(
    {"e.g",  "z.b",  "ca",  "inkl", "max", "min",  "nr",  "st",  "approx", "bzw",  "incl",
     "excl", "evtl", "ggf", "p.ex", "ex",  "bijv", "d.h", "i.e", "no",     "zzgl", "mind",
     "vs",   "bv",   "art", "abs",  "z",   "b",    "g",   "e",   "resp",   "str",  "nov",
     "fr",   "sfr",  "dec", "dez",  "jan", "feb",  "okt", "oct", "sept",   "gem"});

bool is_month_start(std::string_view rest) {
  static constexpr auto kMonths =
      std::to_array<std::string_view>({"jan", "feb", "mar", "mae", "apr", "mai", "jun", "jul",
                                       "aug", "sep", "okt", "nov", "dez", "dec", "maa", "mei"});
  return std::any_of(kMonths.begin(), kMonths.end(),
                     [&](std::string_view one) { return rest.starts_with(one); });
}

/// True when the full stop at `at` ends no sentence.
bool is_inner_stop(std::string_view text, std::size_t at) {
  std::size_t begin = at;
  while (begin > 0 && (is_word_sign(text[begin - 1]) || text[begin - 1] == '.')) --begin;
  const auto word = text.substr(begin, at - begin);
  const auto next = text.find_first_not_of(' ', at + 1);
  if (next == text.npos) return false;
  const bool number = word.empty() && at > 0 && is_ascii_digit(text[at - 1]);
  const auto rest = text.substr(next);
  if (number) {
    const bool short_number = at < 3 || !is_ascii_digit(text[at - 3]) || text[at - 2] == ' ';
    return short_number && is_month_start(rest);
  }
  // "30 days to change your mind. Free returns.": no German "mindestens"
  if (word == "mind" && text.substr(0, begin).ends_with("your ")) return false;
  return std::find(kAbbreviations.begin(), kAbbreviations.end(), word) != kAbbreviations.end() &&
         !word.empty();
}

/// The end of letters with stops between them ("u.s", "z.b"), without the last stop; `at` where
/// there are none.
std::size_t dotted_letters(std::string_view text, std::size_t at) {
  const auto letter = [&](std::size_t i) { return i < text.size() && is_word_sign(text[i]); };
  if (at > 0 && (is_word_sign(text[at - 1]) || text[at - 1] == '.' || text[at - 1] == '@'))
    return at;
  std::size_t end = at;
  while (letter(end) && !letter(end + 1) && end + 1 < text.size() && text[end + 1] == '.') end += 2;
  if (letter(end) && !letter(end + 1) && end > at) return end + 1;
  return end >= at + 4 ? end - 1 : at;
}

}  // namespace

std::vector<PolicyToken> policy_tokens(std::string_view text) {
  const Folded folded(text);
  const std::string& all = folded.text;
  std::vector<PolicyToken> tokens;
  const auto push = [&](std::size_t begin, std::size_t end) {
    tokens.push_back({all.substr(begin, end - begin), folded.place[begin], folded.place[end]});
  };
  for (std::size_t at = 0; at < all.size();) {
    std::size_t end = at;
    if (const auto letters = dotted_letters(all, at); letters > at) {
      std::string word = all.substr(at, letters - at);
      if (word == "a.m" || word == "p.m") word.erase(1, 1);
      end = letters < all.size() && all[letters] == '.' ? letters + 1 : letters;
      tokens.push_back({std::move(word), folded.place[at], folded.place[end]});
    } else if (is_word_sign(all[at])) {
      while (end < all.size() && is_word_sign(all[end])) ++end;
      if (end + 1 < all.size() && all[end] == '\'' && is_word_sign(all[end + 1])) {
        std::size_t last = end + 1;
        while (last < all.size() && is_word_sign(all[last])) ++last;
        end = is_english_ending(std::string_view(all).substr(end + 1, last - end - 1)) ? last
                                                                                       : end + 1;
      }
      push(at, end);
    } else if (is_ascii_digit(all[at])) {
      while (end < all.size() && is_ascii_digit(all[end])) ++end;
      push(at, end);
    } else {
      end = at + 1;
      const bool hyphen = all[at] == '-' && at > 0 && end < all.size() &&
                          is_word_sign(all[at - 1]) && is_word_sign(all[end]);
      if (static_cast<unsigned char>(all[at]) > ' ' && !hyphen) push(at, end);
    }
    at = end;
  }
  return tokens;
}

std::vector<std::pair<std::size_t, std::size_t>> sentence_bounds(std::string_view line) {
  const Folded folded(line);
  const std::string_view text = folded.text;
  std::vector<std::pair<std::size_t, std::size_t>> bounds;
  std::size_t begin = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    if (c != '.' && c != '!' && c != '?') continue;
    std::size_t end = at + 1;
    while (end < text.size() && (text[end] == ')' || text[end] == '"' || text[end] == '\'')) ++end;
    if (end < text.size() && text[end] != ' ') continue;
    if (c == '.' && is_inner_stop(text, at)) continue;
    // "U.S. orders": a small letter or a number behind a word with stops in it
    const auto next = text.find_first_not_of(' ', end);
    const char letter = next == text.npos ? ' ' : line[folded.place[next]];
    if (c == '.' && at > 1 && text[at - 2] == '.' &&
        ((letter >= 'a' && letter <= 'z') || is_ascii_digit(letter))) {
      continue;
    }
    bounds.emplace_back(folded.place[begin], folded.place[end]);
    begin = text.find_first_not_of(' ', end);
    if (begin == text.npos) return bounds;
    at = begin - 1;
  }
  if (begin < text.size()) bounds.emplace_back(folded.place[begin], line.size());
  return bounds;
}

}  // namespace rangebook
