// Season labels: the words that name a half, and a year of two or four digits.
#include "tracker/season_parser.h"

#include <array>
#include <string>
#include <tuple>
#include <utility>

#include "tracker/text_fold.h"

namespace rangebook {
namespace {

using Half = Season::Half;

constexpr std::array<std::pair<std::string_view, Half>, 36> kHalfWords{{
    {"ss", Half::spring_summer},        {"sp", Half::spring_summer},
    {"su", Half::spring_summer},        {"spring", Half::spring_summer},
    {"summer", Half::spring_summer},    {"fs", Half::spring_summer},
    {"fruehjahr", Half::spring_summer}, {"fruhjahr", Half::spring_summer},
    {"fruhling", Half::spring_summer},  {"sommer", Half::spring_summer},
    {"pe", Half::spring_summer},        {"printemps", Half::spring_summer},
    {"ete", Half::spring_summer},       {"pv", Half::spring_summer},
    {"primavera", Half::spring_summer}, {"verano", Half::spring_summer},
    {"estate", Half::spring_summer},    {"lente", Half::spring_summer},
    {"zomer", Half::spring_summer},     {"aw", Half::autumn_winter},
    {"fw", Half::autumn_winter},        {"autumn", Half::autumn_winter},
    {"fall", Half::autumn_winter},      {"winter", Half::autumn_winter},
    {"hw", Half::autumn_winter},        {"herbst", Half::autumn_winter},
    {"ah", Half::autumn_winter},        {"automne", Half::autumn_winter},
    {"hiver", Half::autumn_winter},     {"oi", Half::autumn_winter},
    {"otono", Half::autumn_winter},     {"invierno", Half::autumn_winter},
    {"ai", Half::autumn_winter},        {"autunno", Half::autumn_winter},
    {"inverno", Half::autumn_winter},   {"herfst", Half::autumn_winter},
}};

/// Single letters count only in pairs: `S/S 26`, `A/W 26`, `F/W`.
constexpr std::array<std::pair<std::string_view, Half>, 3> kLetterPairs{{
    {"ss", Half::spring_summer},
    {"aw", Half::autumn_winter},
    {"fw", Half::autumn_winter},
}};

std::optional<Half> half_of(std::string_view word, const auto& table) {
  for (const auto& [entry, half] : table) {
    if (entry == word) return half;
  }
  return std::nullopt;
}

constexpr int kCentury = 2000;  ///< of years with two digits
constexpr int kFirstYear = 1900;
constexpr int kLastYear = 2099;

std::optional<int> year_of(std::string_view digits) {
  if (digits.size() != 2 && digits.size() != 4) return std::nullopt;
  int year = digits.size() == 2 ? kCentury : 0;
  int value = 0;
  for (const char c : digits) value = value * 10 + (c - '0');
  year += value;
  if (year < kFirstYear || year > kLastYear) return std::nullopt;
  return year;
}

/// What is gathered from a label, word by word.
struct Gathered {
  std::optional<Half> half;
  std::optional<int> year;
  std::string letters;  ///< single letters, for `A/W`
  bool strange = false;

  void add_half(std::optional<Half> found) {
    strange = strange || !found || (half && *half != *found);
    half = found;
  }
  void add_word(std::string_view word) {
    if (word.size() == 1) {
      letters += word;
    } else {
      add_half(half_of(word, kHalfWords));
    }
  }
  /// `AW 2026/27` and `AW26/27` are named by the year they begin in.
  void add_year(std::string_view digits) {
    const auto found = year_of(digits);
    const bool next = found && year && *found == *year + 1 && half == Half::autumn_winter;
    strange = strange || !found || (year && !next);
    if (!year) year = found;
  }
};

std::size_t run(std::string_view text, auto belongs) {
  std::size_t n = 0;
  while (n < text.size() && belongs(text[n])) ++n;
  return n;
}

bool is_joint(char c) { return std::string_view(" /-.&+'_").find(c) != std::string_view::npos; }

Gathered gather(std::string_view rest) {
  Gathered gathered;
  while (!rest.empty() && !gathered.strange) {
    std::size_t length = 1;
    if (is_ascii_digit(rest.front())) {
      length = run(rest, is_ascii_digit);
      gathered.add_year(rest.substr(0, length));
    } else if (is_ascii_letter(rest.front())) {
      length = run(rest, is_ascii_letter);
      gathered.add_word(rest.substr(0, length));
    } else {
      gathered.strange = !is_joint(rest.front());
    }
    rest.remove_prefix(length);
  }
  if (!gathered.letters.empty()) gathered.add_half(half_of(gathered.letters, kLetterPairs));
  return gathered;
}

std::string code_of(Half half, int year) {
  std::string code = half == Half::spring_summer ? "SS" : "AW";
  const auto digits = std::to_string(year);
  return code + (year / 100 == kCentury / 100 ? digits.substr(2) : digits);
}

}  // namespace

Season parse_season(std::string_view text) {
  text = trim_text(text);
  Season season{.label = std::string(text), .year = {}, .half = {}};
  if (text.size() > kMaxSeasonBytes) return season;
  const auto gathered = gather(fold_text(text));
  if (gathered.strange || !gathered.half || !gathered.year) return season;
  season.half = gathered.half;
  season.year = gathered.year;
  season.label = code_of(*season.half, *season.year);
  return season;
}

bool season_less(const Season& a, const Season& b) {
  const auto key = [](const Season& season) {
    return std::tuple(!season.year, season.year.value_or(0), season.half.value_or(Half{}));
  };
  return std::tuple(key(a), std::string_view(a.label)) <
         std::tuple(key(b), std::string_view(b.label));
}

}  // namespace rangebook
