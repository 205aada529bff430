// Days and months in digits, in words and by name.
#include "importers/policy_dates.h"

#include <algorithm>

#include "importers/byte_search.h"
#include "importers/policy_words.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

bool is_number(const PolicyToken& token) { return is_ascii_digit(token.word[0]); }

class Dates {
 public:
  explicit Dates(const std::vector<PolicyToken>& tokens) : tokens_(tokens) {}

  std::optional<PolicyDate> read(std::size_t at) {
    if (!add_date(at)) return std::nullopt;
    return found_;
  }

 private:
  bool is(std::size_t at, std::string_view word) const {
    return at < tokens_.size() && tokens_[at].word == word;
  }

  /// The year behind a day and month, also after a comma or full stop.
  std::size_t take_year(std::size_t at, SeasonDay& day) const {
    const std::size_t skip = is(at, ",") || is(at, ".") || is(at, "de") ? 1 : 0;
    if (at + skip < tokens_.size() && is_number(tokens_[at + skip])) {
      const std::string& word = tokens_[at + skip].word;
      if (word.size() == 4 && word.starts_with("20")) {
        day.year = number_at(tokens_, at + skip)->value;
        return at + skip + 1;
      }
    }
    return at;
  }

  bool add_day(SeasonDay day, std::size_t end) {
    if (day.month < 1 || day.month > 12 || !is_possible(day)) return false;
    found_ = PolicyDate{day, end};
    return true;
  }

  bool add_date(std::size_t at) {
    if (add_month_end(at) || add_feast(at)) return true;
    if (is_number(tokens_[at])) return add_numeric_date(at) || add_day_month(at);
    const auto month = month_named(tokens_[at].word);
    if (!month || at + 1 >= tokens_.size() || !is_number(tokens_[at + 1])) return false;
    const auto number = number_at(tokens_, at + 1);
    if (!number || number->value > 31 || number->value == 0) return false;
    std::size_t end = at + 2;
    if (is_ordinal(end)) ++end;
    SeasonDay day{std::nullopt, *month, static_cast<unsigned>(number->value)};
    end = take_year(end, day);
    return add_day(day, end);
  }

  bool is_ordinal(std::size_t at) const {
    return is(at, "st") || is(at, "nd") || is(at, "rd") || is(at, "th") || is(at, "er") ||
           is(at, "e");
  }

  bool add_day_month(std::size_t at) {
    const auto number = number_at(tokens_, at);
    if (!number || number->value == 0 || number->value > 31) return false;
    std::size_t next = at + 1;
    if (is_ordinal(next) || is(next, ".")) ++next;
    if (is(next, "of") || is(next, "de")) ++next;
    if (next >= tokens_.size()) return false;
    const auto month = month_named(tokens_[next].word);
    if (!month) return false;
    SeasonDay day{std::nullopt, *month, static_cast<unsigned>(number->value)};
    std::size_t end = next + 1;
    if (is(end, ".") && end + 1 < tokens_.size() && is_number(tokens_[end + 1])) ++end;
    const std::size_t behind = take_year(end, day);
    return add_day(day, behind == end ? next + 1 : behind);
  }

  /// 31/01/2027, 31.01.2027, 31.1., 2027-01-31.
  bool add_numeric_date(std::size_t at) {
    const auto value = [&](std::size_t i) {
      const auto number = i < tokens_.size() ? number_at(tokens_, i) : std::nullopt;
      return number && is_number(tokens_[i]) ? number->value : -1;
    };
    const int first = value(at);
    if (tokens_[at].word.size() == 4 && is(at + 1, "-") && is(at + 3, "-")) {
      const int month = value(at + 2);
      const int number = value(at + 4);
      if (month < 1 || number < 1) return false;
      return add_day({first, static_cast<unsigned>(month), static_cast<unsigned>(number)}, at + 5);
    }
    for (const std::string_view sign : {"/", "."}) {
      const int month = value(at + 2);
      if (!is(at + 1, sign) || !is(at + 3, sign) || first < 1 || month < 1) continue;
      const int year = value(at + 4);
      SeasonDay day{std::nullopt, static_cast<unsigned>(month), static_cast<unsigned>(first)};
      if (year >= 2000 && year < 2100) {
        day.year = year;
        return add_day(day, at + 5);
      }
      if (sign == "." && touching(at, at + 3)) return add_day(day, at + 4);
    }
    return false;
  }

  bool touching(std::size_t first, std::size_t last) const {
    return tokens_[last].begin - tokens_[first].begin <= 6;
  }

  /// Days that have a name in place of a date.
  bool add_feast(std::size_t at) {
    struct Feast {
      std::string_view first;
      std::string_view second;  ///< empty: one word
      unsigned month;
      unsigned day;
    };
    static constexpr Feast kFeasts[] = {
        {"christmas", "eve", 12, 24}, {"christmas", "day", 12, 25}, {"boxing", "day", 12, 26},
        {"heiligabend", "", 12, 24},  {"heilig", "abend", 12, 24},  {"kerstavond", "", 12, 24},
        {"nochebuena", "", 12, 24},   {"silvester", "", 12, 31},    {"saint", "sylvestre", 12, 31},
        {"nochevieja", "", 12, 31},   {"oudjaar", "", 12, 31},      {"neujahr", "", 1, 1}};
    for (const Feast& feast : kFeasts) {
      if (!is(at, feast.first) || (!feast.second.empty() && !is(at + 1, feast.second))) continue;
      return add_day({std::nullopt, feast.month, feast.day}, at + (feast.second.empty() ? 1 : 2));
    }
    return false;
  }

  bool add_month_end(std::size_t at) {
    static constexpr std::string_view kEnds[] = {"end", "ende", "fin", "eind", "einde"};
    if (std::find(std::begin(kEnds), std::end(kEnds), tokens_[at].word) == std::end(kEnds)) {
      return false;
    }
    std::size_t next = at + 1;
    while (is(next, "of") || is(next, "van") || is(next, "des") || is(next, "de")) ++next;
    const auto month = next < tokens_.size() ? month_named(tokens_[next].word) : std::nullopt;
    if (!month) return false;
    static constexpr unsigned kLast[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    SeasonDay day{std::nullopt, *month, kLast[*month - 1]};
    const std::size_t end = take_year(next + 1, day);
    return add_day(day, end);
  }

  const std::vector<PolicyToken>& tokens_;
  PolicyDate found_;
};

}  // namespace

std::optional<PolicyDate> policy_date(const std::vector<PolicyToken>& tokens, std::size_t at) {
  return Dates(tokens).read(at);
}

}  // namespace rangebook
