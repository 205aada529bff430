// Marks worked out from numbers: amounts, times, dates, weights, shares. They take the place of the
// phrases they cover.
#include <algorithm>
#include <string>

#include "importers/byte_search.h"
#include "importers/page_money.h"
#include "importers/policy_dates.h"
#include "importers/policy_refine.h"
#include "importers/policy_tokens.h"
#include "importers/policy_words.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using Tokens = std::vector<PolicyToken>;
using R = PolicyRole;

bool is_number(const PolicyToken& token) { return is_ascii_digit(token.word[0]); }

/// The amount of money in a text; nothing where its separators do not say which it is.
std::optional<Money> amount_of(std::string_view text, std::optional<Currency> currency) {
  if (!currency) return std::nullopt;
  std::string digits;
  for (const char c : text) {
    const bool keep = is_ascii_digit(c) || ((c == '.' || c == ',') && !digits.empty());
    if (keep) digits += c;
  }
  while (!digits.empty() && !is_ascii_digit(digits.back())) digits.pop_back();
  return read_money(digits + " " + std::string(currency->code()), {});
}

class Numbers {
 public:
  Numbers(std::string_view sentence, const Tokens& tokens, std::vector<PolicyMark> phrases,
          std::optional<Currency> home)
      : sentence_(sentence), tokens_(tokens), phrases_(std::move(phrases)), home_(home) {}

  std::vector<PolicyMark> read() {
    add_money();
    add_country_codes();
    for (std::size_t at = 0; at < tokens_.size(); ++at) {
      if (taken(at)) continue;
      if (add_worded_money(at)) continue;
      if (add_date(at) || add_span(at) || add_measure(at)) continue;
    }
    add_next_days();
    for (std::size_t at = 0; at < tokens_.size(); ++at) add_bare_amount(at);
    return merged();
  }

 private:
  bool taken(std::size_t at) const {
    return std::any_of(found_.begin(), found_.end(),
                       [&](const PolicyMark& one) { return one.begin <= at && at < one.end; });
  }
  bool is(std::size_t at, std::string_view word) const {
    return at < tokens_.size() && tokens_[at].word == word;
  }
  const PolicyMark* phrase_at(std::size_t at, R role) const {
    for (const auto& one : phrases_) {
      if (one.begin == at && one.role == role) return &one;
    }
    return nullptr;
  }
  bool phrase_ends(std::size_t at, R role) const {
    return std::any_of(phrases_.begin(), phrases_.end(),
                       [&](const PolicyMark& one) { return one.end == at && one.role == role; });
  }
  void add(PolicyMark mark, std::size_t begin, std::size_t end) {
    mark.begin = static_cast<std::uint32_t>(begin);
    mark.end = static_cast<std::uint32_t>(end);
    found_.push_back(mark);
  }

  void add_money() {
    for (const auto& money : find_money(sentence_)) {
      std::size_t begin = 0;
      while (begin < tokens_.size() && tokens_[begin].end <= money.begin) ++begin;
      std::size_t end = begin;
      while (end < tokens_.size() && tokens_[end].begin < money.end) ++end;
      if (end == begin) continue;
      const auto currency = money.currency.empty() ? home_ : Currency::from_code(money.currency);
      PolicyMark mark{.role = R::money};
      mark.money = amount_of(sentence_.substr(money.begin, money.end - money.begin), currency);
      add(mark, begin, end);
    }
  }

  /// "Four pounds", "vijftien euro"
  bool add_worded_money(std::size_t at) {
    if (!home_ || taken(at) || is_number(tokens_[at])) return false;
    const auto number = number_at(tokens_, at);
    if (!number || number->article) return false;
    struct Name {
      std::string_view word;
      std::string_view code;  ///< ends what the shop's currency has to end with
    };
    static constexpr Name kNames[] = {{"euro", "EUR"},    {"euros", "EUR"}, {"pounds", "GBP"},
                                      {"quid", "GBP"},    {"dollars", "D"}, {"francs", "CHF"},
                                      {"franken", "CHF"}, {"frank", "CHF"}};
    const std::size_t unit = at + number->tokens;
    for (const Name& name : kNames) {
      if (!is(unit, name.word) || !home_->code().ends_with(name.code)) continue;
      PolicyMark mark{.role = R::money};
      mark.money = amount_of(std::to_string(number->value), home_);
      add(mark, at, unit + 1);
      return true;
    }
    return false;
  }

  /// "NL: 3,99": codes of countries in capitals, in a sentence that is not all capitals.
  void add_country_codes() {
    static constexpr std::string_view kCodes[] = {"NL", "BE", "DE", "FR", "AT", "CH", "IE", "LU"};
    const auto small = std::count_if(sentence_.begin(), sentence_.end(),
                                     [](char c) { return c >= 'a' && c <= 'z'; });
    const auto large = std::count_if(sentence_.begin(), sentence_.end(),
                                     [](char c) { return c >= 'A' && c <= 'Z'; });
    if (small < 6 || small < large) return;  // "CONDITIONS DE VENTE (extrait)"
    for (std::size_t at = 0; at < tokens_.size(); ++at) {
      const auto word = sentence_.substr(tokens_[at].begin, tokens_[at].end - tokens_[at].begin);
      const auto* code = std::find(std::begin(kCodes), std::end(kCodes), word);
      if (code == std::end(kCodes) || phrase_at(at, R::region) != nullptr) continue;
      PolicyMark mark{.role = R::region};
      mark.value = *code;
      add(mark, at, at + 1);
    }
  }

  bool add_date(std::size_t at) {
    const auto date = policy_date(tokens_, at);
    if (!date) return false;
    PolicyMark mark{.role = R::day};
    mark.day = date->day;
    add(mark, at, date->end);
    return true;
  }

  /// Steps over "(14)" behind a number, and over a hyphen or an adjective before the unit.
  std::size_t to_unit(std::size_t at) const {
    if (is(at, "(") && at + 2 < tokens_.size() && number_at(tokens_, at + 1) && is(at + 2, ")")) {
      at += 3;
    }
    if (is(at, "-")) ++at;
    static constexpr std::string_view kBetween[] = {
        "full",    "whole",   "entire", "volle", "vollen",   "ganze",  "ganzen", "hele",    "extra",
        "further", "weitere", "more",   "clear", "weiteren", "autres", "entier", "complete"};
    if (at < tokens_.size() && std::find(std::begin(kBetween), std::end(kBetween),
                                         tokens_[at].word) != std::end(kBetween)) {
      ++at;
    }
    return at;
  }

  static DaySpan in_days(DaySpan span, std::string_view unit) {
    const auto times = [&](int factor) {
      if (span.min) *span.min *= factor;
      if (span.max) *span.max *= factor;
    };
    if (unit == "weeks") times(7);
    if (unit == "years") times(12);
    if (unit.starts_with("working")) span.unit = DayUnit::working_days;
    if (unit == "months" || unit == "years") span.unit = DayUnit::months;
    if (unit.ends_with("hours")) {
      if (span.min) *span.min = (*span.min + 23) / 24;
      if (span.max) *span.max = (*span.max + 23) / 24;
    }
    return span;
  }

  bool add_span(std::size_t at) {
    if (is(at, "fortnight")) return push_span({14, 14, DayUnit::days}, at, at + 1);
    const auto first = number_at(tokens_, at);
    // "7 days a week", "twice a week"
    const bool often =
        at > 0 && (is(at - 1, "once") || is(at - 1, "twice") || is(at - 1, "times") ||
                   is(at - 1, "fois") || is(at - 1, "mal") || is(at - 1, "keer"));
    const bool rhythm = first && first->article && (often || phrase_ends(at, R::unit));
    if (!first || rhythm || follows_number(at)) return false;
    std::size_t next = at + first->tokens;
    auto last = first;
    if (is_range_word(next)) {
      const auto second = number_at(tokens_, next + 1);
      if (second && !second->article && second->value > first->value) {
        last = second;
        next += 1 + second->tokens;
      }
    } else if (const auto two = or_two(*first, next)) {
      return push_span(in_days({1, two->first, DayUnit::days}, unit_at(next)->value), at,
                       two->second);
    } else if (unit_at(next) != nullptr && is_range_word(unit_at(next)->end)) {
      // "2 days to 4 days"
      const auto second = number_at(tokens_, unit_at(next)->end + 1);
      const auto behind = second ? unit_at(unit_at(next)->end + 1 + second->tokens) : nullptr;
      if (behind != nullptr && second->value > first->value) {
        last = second;
        next = unit_at(next)->end + 1 + second->tokens;
      }
    }
    next = to_unit(next);
    const PolicyMark* unit = unit_at(next);
    if (unit == nullptr || last->value == 0) return false;
    const bool limit = phrase_ends(at, R::within);  // "within a working day"
    const bool vague = first->article && !limit && last->value == 1 && unit->value != "months" &&
                       unit->value != "weeks" && unit->value != "years";
    if (vague) return false;  // "a day"
    if (unit->value.ends_with("hours") && last->value < 12) return false;
    const bool minutes = at > 1 && is(at - 1, ".") && is_number(tokens_[at - 2]);
    const bool clock = minutes || (last->value < 24 && !phrase_ends(at, R::within));
    if (unit->value == "hours" && clock) return false;  // "between 18 and 22 h"
    if (is_rhythm(unit->end)) return false;
    const DaySpan span{first->value, last->value, DayUnit::days};
    return push_span(in_days(span, unit->value), at, unit->end);
  }

  /// "A week or two": the larger number and where it ends.
  std::optional<std::pair<int, std::size_t>> or_two(const PolicyNumber& first,
                                                    std::size_t next) const {
    const auto* unit = unit_at(next);
    if (unit == nullptr || !first.article || first.value != 1) return std::nullopt;
    if (!is(unit->end, "or") && !is(unit->end, "oder") && !is(unit->end, "ou") &&
        !is(unit->end, "of") && !is(unit->end, "o")) {
      return std::nullopt;
    }
    const auto second = number_at(tokens_, unit->end + 1);
    if (!second || second->article || second->value > 4) return std::nullopt;
    const std::size_t end = unit->end + 1 + second->tokens;
    if (unit_at(end) != nullptr) return std::nullopt;
    return std::pair{second->value, end};
  }

  /// "7 days a week"
  bool is_rhythm(std::size_t at) const {
    return (is(at, "a") && is(at + 1, "week")) || (is(at, "per") && is(at + 1, "week")) ||
           (is(at, "die") && is(at + 1, "woche")) || (is(at, "pro") && is(at + 1, "woche")) ||
           (is(at, "par") && is(at + 1, "semaine")) || (is(at, "sur") && is(at + 1, "7"));
  }

  /// "2 .. 3 days" with a word between them that is not understood.
  bool follows_number(std::size_t at) const {
    return at >= 2 && !taken(at - 2) && is_number(tokens_[at - 2]) &&
           tokens_[at - 1].word.size() <= 3 && is_ascii_letter(tokens_[at - 1].word[0]);
  }

  const PolicyMark* unit_at(std::size_t at) const { return phrase_at(at, R::unit); }
  bool is_range_word(std::size_t at) const {
    return is(at, "-") || is(at, "to") || is(at, "bis") || is(at, "a") || is(at, "tot") ||
           is(at, "and") || is(at, "und") || is(at, "et") || is(at, "en") || is(at, "or") ||
           is(at, "oder") || is(at, "ou") || is(at, "of") || is(at, "/") || is(at, "y") ||
           is(at, "o");
  }

  /// "Five days at the most"
  bool is_limit_behind(std::size_t at) const {
    static constexpr std::string_view kFirst[] = {"at",        "maximum", "max",  "maximal",
                                                  "hochstens", "au",      "tout", "ten",
                                                  "maximaal",  "hooguit", "como", "tops"};
    return phrase_at(at, R::within) != nullptr &&
           std::find(std::begin(kFirst), std::end(kFirst), tokens_[at].word) != std::end(kFirst);
  }

  bool push_span(const DaySpan& span, std::size_t begin, std::size_t end) {
    PolicyMark mark{.role = R::span};
    mark.span = span;
    std::size_t before = begin;
    for (int skip = 0; skip < 3 && before > 0 && !mark.open; ++skip, --before) {
      mark.open = phrase_ends(before, R::within);
    }
    // "part sous 24 h", "ships within 2 days": also where the word is part of another phrase
    const bool said = begin > 0 && (is(begin - 1, "within") || is(begin - 1, "sous") ||
                                    is(begin - 1, "binnen") || is(begin - 1, "innerhalb"));
    mark.open = mark.open || said || is_limit_behind(end);
    if (mark.open && mark.span.min == mark.span.max) mark.span.min.reset();
    add(mark, begin, end);
    return true;
  }

  /// `2 kg`, `500 g`, `15 %`.
  bool add_measure(std::size_t at) {
    if (!is_number(tokens_[at])) return false;
    const auto number = number_at(tokens_, at);
    if (!number) return false;
    PolicyMark mark;
    mark.number = number->value;
    if (is(at + 1, "kg") || is(at + 1, "kilo") || is(at + 1, "kilos")) {
      mark.role = R::grams;
      mark.number *= 1000;
    } else if (is(at + 1, "g") || is(at + 1, "grams") || is(at + 1, "gramm")) {
      mark.role = R::grams;
    } else if (is(at + 1, "%") || is(at + 1, "percent") || is(at + 1, "prozent")) {
      mark.role = R::share;
      mark.number *= 100;
    } else {
      return false;
    }
    if (mark.number > kMaxTermsCount) return false;
    add(mark, at, at + 2);
    return true;
  }

  /// "gets to you the next day": a time, not the name of a service.
  bool is_time(std::size_t at, std::size_t end) const {
    if (end == at + 2 && is(end, "in")) return true;  // "next day in Ireland"
    if (at == 0) return false;
    const std::string& before = tokens_[at - 1].word;
    return before == "the" || before == "on" || before == "by" || before == "am" ||
           before == "le" || before == "de" || before == "den" || before == "am";
  }

  /// "two-day shipping": the name says how long it takes.
  void add_named_span(const PolicyMark& kind) {
    const auto number = number_at(tokens_, kind.begin);
    const auto next = kind.begin + (number ? number->tokens : 0);
    if (!number || number->article || !(is(next, "day") || is(next, "days"))) return;
    PolicyMark mark{.role = R::next_day};
    mark.span = {number->value, number->value, DayUnit::days};
    mark.begin = kind.begin;
    mark.end = kind.end;
    if (!taken(kind.begin)) implied_.push_back(mark);
  }

  /// "Zustellung am naechsten Werktag"
  static bool names_working_day(std::string_view word) {
    static constexpr std::string_view kWords[] = {"working",    "business",  "werktag",
                                                  "arbeitstag", "ouvre",     "ouvrable",
                                                  "werkdag",    "laborable", "habil"};
    return std::find(std::begin(kWords), std::end(kWords), word) != std::end(kWords);
  }

  void add_next_days() {
    for (const auto& phrase : phrases_) {
      if (phrase.role == R::kind) add_named_span(phrase);
      const bool kind = phrase.role == R::kind && phrase.value == "next-day";
      if (!kind && phrase.role != R::next_day) continue;
      const bool both = phrase_at(phrase.begin, R::kind) != nullptr &&
                        phrase_at(phrase.begin, R::next_day) != nullptr;
      if (both && kind == is_time(phrase.begin, phrase.end)) continue;
      bool working = phrase.value == "working_days";
      for (auto i = phrase.begin; i < phrase.end; ++i) {
        working = working || names_working_day(tokens_[i].word);
      }
      PolicyMark mark{.role = kind ? R::next_day : R::span};
      mark.span = {1, 1, working ? DayUnit::working_days : DayUnit::days};
      mark.begin = phrase.begin;
      mark.end = phrase.end;
      (kind ? implied_ : found_).push_back(mark);
    }
  }

  /// "22.00 h", "10 pm"
  bool is_hour(std::size_t at) const {
    static constexpr std::string_view kHours[] = {"uhr", "uur", "h", "heures", "pm", "am", "horas"};
    if (at >= tokens_.size() || !is_number(tokens_[at])) return false;
    std::size_t end = at + 1;
    if (is(end, ".") || is(end, ":")) end += 2;
    return end < tokens_.size() &&
           std::find(std::begin(kHours), std::end(kHours), tokens_[end].word) != std::end(kHours);
  }

  /// "orders over 50", "costs 2.95": a number without a sign where only an amount makes sense.
  void add_bare_amount(std::size_t at) {
    if (!home_ || taken(at) || !is_number(tokens_[at])) return;
    if (at > 0 && (is(at - 1, ".") || is(at - 1, ",") || is(at - 1, ":") || is(at - 1, "/"))) {
      if (tokens_[at].begin == tokens_[at - 1].end) return;
    }
    std::size_t end = at + 1;
    const bool decimals = (is(end, ".") || is(end, ",")) && end + 1 < tokens_.size() &&
                          tokens_[end + 1].word.size() == 2 && is_number(tokens_[end + 1]) &&
                          tokens_[end + 1].begin == tokens_[at].end + 1;
    if (decimals) end += 2;
    if (is_range_word(end) && is_hour(end + 1)) return;  // "between 18.00 and 22.00 h"
    const bool range = end + 1 < tokens_.size() && is_range_word(end) &&
                       std::any_of(found_.begin(), found_.end(), [&](const PolicyMark& one) {
                         return one.role == R::money && one.begin == end + 1;
                       });
    const bool signed_money = std::any_of(found_.begin(), found_.end(),
                                          [](const auto& one) { return one.role == R::money; });
    const bool time = std::any_of(found_.begin(), found_.end(),
                                  [](const auto& one) { return one.role == R::span; });
    if (!decimals && time && !signed_money) return;  // "within 3 days, but allow up to 7"
    const bool bound = range || phrase_ends(at, R::over) || phrase_ends(at, R::from) ||
                       phrase_ends(at, R::under) || phrase_at(end, R::or_more) != nullptr;
    static constexpr std::string_view kNotMoney[] = {
        "uhr",      "uur",       "h",        "pm",        "am",       "o'clock",   "kg",
        "%",        "cm",        "items",    "noon",      "artikel",  "articles",  "pieces",
        "p",        "artikelen", "uren",     "-",         "/",        "heures",    "a",
        "years",    "artikeln",  "stuck",    "stucke",    "stucken",  "teile",     "teilen",
        "paar",     "paires",    "produkte", "produkten", "produits", "producten", "stuks",
        "garments", "pairs",     "products", "pieces",    "prendas",  "articulos", "lines",
        "books"};
    const bool other = !range && end < tokens_.size() &&
                       (std::find(std::begin(kNotMoney), std::end(kNotMoney), tokens_[end].word) !=
                            std::end(kNotMoney) ||
                        phrase_at(end, R::unit) != nullptr || month_named(tokens_[end].word));
    if (other || (!decimals && !bound)) return;
    if (!decimals && (tokens_[at].word.size() > 4 || !(range || speaks_of_orders()))) return;
    const auto first = tokens_[at].begin;
    PolicyMark mark{.role = R::money};
    mark.money = amount_of(sentence_.substr(first, tokens_[end - 1].end - first), home_);
    if (mark.money) add(mark, at, end);
  }

  bool speaks_of_orders() const {
    return std::any_of(phrases_.begin(), phrases_.end(), [](const PolicyMark& one) {
      return one.role == R::order || one.role == R::free || one.role == R::delivery;
    });
  }

  /// "4 EUR par colis" is a rate, "Par colis, 4 EUR" a way.
  bool is_per_parcel(const PolicyMark& method) const {
    const bool rate = std::any_of(phrases_.begin(), phrases_.end(), [&](const PolicyMark& one) {
      return one.role == R::per_parcel && one.begin == method.begin;
    });
    return rate && std::any_of(found_.begin(), found_.end(), [&](const PolicyMark& one) {
             return one.role == R::money && one.end == method.begin;
           });
  }

  /// "shop@example.com"
  bool is_in_address(const PolicyMark& mark) const {
    const auto touches = [&](std::size_t at) {
      return at + 1 < tokens_.size() && tokens_[at].end == tokens_[at + 1].begin;
    };
    const bool before = mark.begin > 0 && touches(mark.begin - 1) &&
                        (is(mark.begin - 1, ".") || is(mark.begin - 1, "@"));
    return before || (is(mark.end, ".") && touches(mark.end - 1) && touches(mark.end));
  }

  std::vector<PolicyMark> merged() {
    std::vector<PolicyMark> all;
    for (const auto& phrase : phrases_) {
      const bool covered = std::any_of(found_.begin(), found_.end(), [&](const PolicyMark& one) {
        return one.begin < phrase.end && phrase.begin < one.end &&
               (phrase.role == R::unit || phrase.end <= one.end || phrase.role == R::within);
      });
      const bool time =
          phrase.role == R::kind && phrase.value == "next-day" && is_time(phrase.begin, phrase.end);
      const bool plain = !(phrase.role == R::example && is_in_address(phrase)) &&
                         phrase.role != R::unit && phrase.role != R::next_day &&
                         !(phrase.role == R::method && is_per_parcel(phrase));
      if (!covered && !time && plain) all.push_back(phrase);
    }
    all.insert(all.end(), found_.begin(), found_.end());
    all.insert(all.end(), implied_.begin(), implied_.end());
    std::stable_sort(all.begin(), all.end(),
                     [](const PolicyMark& a, const PolicyMark& b) { return a.begin < b.begin; });
    return all;
  }

  std::string_view sentence_;
  const Tokens& tokens_;
  std::vector<PolicyMark> phrases_;
  std::vector<PolicyMark> found_;
  std::vector<PolicyMark> implied_;
  std::optional<Currency> home_;
};

}  // namespace

std::vector<PolicyMark> policy_marks(std::string_view sentence, const Tokens& tokens,
                                     std::optional<Currency> home) {
  auto marks = Numbers(sentence, tokens, phrase_marks(tokens), home).read();
  refine_marks(marks, tokens);
  return marks;
}

}  // namespace rangebook
