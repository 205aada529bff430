// Values of terms that are lists, as text: parts joined by commas or semicolons.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "schema/terms_names.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

/// The trimmed parts; nothing when one is empty or there are too many.
std::optional<std::vector<std::string_view>> parts_of(std::string_view text, char sign) {
  std::vector<std::string_view> parts;
  while (true) {
    const auto end = text.find(sign);
    const auto part = trimmed(text.substr(0, end));
    if (part.empty() || parts.size() == kMaxTermsList) return std::nullopt;
    parts.push_back(part);
    if (end == text.npos) return parts;
    text.remove_prefix(end + 1);
  }
}

/// Reads the parts one by one; `as_set`: in order, each once.
template <typename T, typename Read>
std::optional<std::vector<T>> read_list(std::string_view text, char sign, Read read,
                                        bool as_set = false) {
  if (text.size() > kMaxTermsText) return std::nullopt;
  const auto parts = parts_of(text, sign);
  if (!parts) return std::nullopt;
  std::vector<T> list;
  for (const auto part : *parts) {
    std::optional<T> one = read(part);
    if (!one) return std::nullopt;
    list.push_back(std::move(*one));
  }
  if (as_set) {
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end()), list.end());
  }
  return list;
}

template <typename T>
std::string joined(const std::vector<T>& list, std::string_view sign,
                   std::string (*text)(const T&)) {
  std::string all;
  for (const auto& one : list) {
    if (!all.empty()) all += sign;
    all += text(one);
  }
  return all;
}

/// Where a word stands between blanks.
std::size_t find_words(std::string_view text, std::string_view words) {
  const auto at = (" " + std::string(text) + " ").find(" " + std::string(words) + " ");
  return at == std::string::npos ? text.npos : at;
}

std::string step_text(const ValueStep& step) {
  return to_string(step.fee) + " from " + to_string(step.from);
}

std::string weight_text(const WeightStep& step) {
  return step.grams ? fmt::format("{} up to {} g", to_string(step.fee), *step.grams)
                    : to_string(step.fee) + " above";
}

/// `2000 g`, `2 kg`, `2.5 kg`.
std::optional<int> read_grams(std::string_view text) {
  const bool kilos = text.ends_with("kg");
  if (!kilos && !text.ends_with('g')) return std::nullopt;
  text = trimmed(text.substr(0, text.size() - (kilos ? 2 : 1)));
  const auto point = kilos ? text.find_first_of(".,") : text.npos;
  std::string digits(text.substr(0, point));
  std::string part(point == text.npos ? std::string_view{} : text.substr(point + 1));
  if (part.size() > 3 || (point != text.npos && part.empty())) return std::nullopt;
  if (kilos) part.resize(3, '0');
  digits += part;
  if (digits.empty() || digits.size() > 6) return std::nullopt;
  int grams = 0;
  for (const char c : digits) {
    if (c < '0' || c > '9') return std::nullopt;
    grams = grams * 10 + (c - '0');
  }
  return grams <= kMaxTermsCount ? std::optional(grams) : std::nullopt;
}

std::string season_text(const SeasonalWindow& season) {
  std::string text;
  if (season.from && season.to) {
    text = fmt::format("bought {} to {}, ", to_string(*season.from), to_string(*season.to));
  } else if (season.from) {
    text = fmt::format("bought from {}, ", to_string(*season.from));
  } else if (season.to) {
    text = fmt::format("bought up to {}, ", to_string(*season.to));
  }
  if (season.until) {
    text += "return by " + to_string(*season.until);
    if (season.days) text += ", ";
  }
  if (season.days) text += fmt::format("return within {} days", *season.days);
  return text;
}

std::optional<ValueStep> read_step(std::string_view text, std::optional<Currency> home) {
  const std::string words = plain_words(text);
  const auto between = find_words(words, "from");
  if (between == words.npos) return std::nullopt;
  const auto fee = read_money(std::string_view(words).substr(0, between), home);
  const auto from = read_money(std::string_view(words).substr(between + 4), home);
  if (!fee || !from) return std::nullopt;
  return ValueStep{*from, *fee};
}

std::optional<WeightStep> read_weight(std::string_view text, std::optional<Currency> home) {
  const std::string words = plain_words(text);
  std::string_view rest = words;
  std::optional<int> grams;
  if (const auto between = find_words(rest, "up to"); between != rest.npos) {
    grams = read_grams(trimmed(rest.substr(between + 5)));
    if (!grams) return std::nullopt;
    rest = rest.substr(0, between);
  } else if (rest.ends_with(" above")) {
    rest.remove_suffix(6);
  } else {
    return std::nullopt;
  }
  const auto fee = read_money(rest, home);
  if (!fee) return std::nullopt;
  return WeightStep{grams, *fee};
}

bool read_day(std::string_view text, std::optional<SeasonDay>& day) {
  if (day) return false;
  day = read_season_day(text);
  return day.has_value();
}

/// One clause of a seasonal window.
bool read_season_clause(std::string_view clause, SeasonalWindow& season) {
  const auto rest = [&](std::string_view words) { return clause.substr(words.size()); };
  if (clause.starts_with("return by ")) return read_day(rest("return by "), season.until);
  if (clause.starts_with("return within ")) {
    const auto span = read_value<DaySpan>(rest("return within "), std::nullopt);
    if (!span || span->unit != DayUnit::days || span->min != span->max) return false;
    season.days = span->max;
    return true;
  }
  if (clause.starts_with("bought from ")) return read_day(rest("bought from "), season.from);
  if (clause.starts_with("bought up to ")) return read_day(rest("bought up to "), season.to);
  if (!clause.starts_with("bought ")) return false;
  const auto days = rest("bought ");
  const auto between = find_words(days, "to");
  return between != days.npos && read_day(days.substr(0, between), season.from) &&
         read_day(days.substr(between + 2), season.to);
}

std::optional<SeasonalWindow> read_season(std::string_view text) {
  const std::string words = plain_words(text);
  const auto clauses = parts_of(words, ',');
  if (!clauses) return std::nullopt;
  SeasonalWindow season;
  for (const auto clause : *clauses) {
    if (!read_season_clause(clause, season)) return std::nullopt;
  }
  if (!season.until && !season.days) return std::nullopt;
  return season;
}

}  // namespace

std::string value_text(const std::vector<std::string>& value) {
  return fmt::format("{}", fmt::join(value, ", "));
}
std::string value_text(const std::vector<ValueStep>& value) {
  return joined<ValueStep>(value, "; ", step_text);
}
std::string value_text(const std::vector<WeightStep>& value) {
  return joined<WeightStep>(value, "; ", weight_text);
}
std::string value_text(const std::vector<SeasonalWindow>& value) {
  return joined<SeasonalWindow>(value, "; ", season_text);
}
std::string value_text(const std::vector<RefundForm>& value) {
  return joined<RefundForm>(value, ", ",
                            [](const RefundForm& form) { return std::string(to_string(form)); });
}

template <>
std::optional<std::vector<std::string>> read_value(std::string_view text,
                                                   std::optional<Currency> home) {
  return read_list<std::string>(
      text, ',', [&](std::string_view part) { return read_value<std::string>(part, home); }, true);
}

template <>
std::optional<std::vector<ValueStep>> read_value(std::string_view text,
                                                 std::optional<Currency> home) {
  auto steps =
      read_list<ValueStep>(text, ';', [&](std::string_view part) { return read_step(part, home); });
  if (!steps) return std::nullopt;
  for (std::size_t i = 1; i < steps->size(); ++i) {
    const auto& before = (*steps)[i - 1].from;
    const auto& here = (*steps)[i].from;
    if (here.currency != before.currency || here.minor <= before.minor) return std::nullopt;
  }
  return steps;
}

template <>
std::optional<std::vector<WeightStep>> read_value(std::string_view text,
                                                  std::optional<Currency> home) {
  auto steps = read_list<WeightStep>(
      text, ';', [&](std::string_view part) { return read_weight(part, home); });
  if (!steps) return std::nullopt;
  for (std::size_t i = 1; i < steps->size(); ++i) {
    const auto& before = (*steps)[i - 1].grams;
    const auto& here = (*steps)[i].grams;
    if (!before || (here && *here <= *before)) return std::nullopt;
  }
  return steps;
}

template <>
std::optional<std::vector<SeasonalWindow>> read_value(std::string_view text,
                                                      std::optional<Currency> /*home*/) {
  return read_list<SeasonalWindow>(text, ';', read_season, true);
}

template <>
std::optional<std::vector<RefundForm>> read_value(std::string_view text,
                                                  std::optional<Currency> /*home*/) {
  return read_list<RefundForm>(
      text, ',', [](std::string_view part) { return value_of(kRefundForms, plain_words(part)); },
      true);
}

}  // namespace rangebook
