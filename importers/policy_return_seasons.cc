// Rules for the seasons of returns: what is bought between two days goes back until a third.
#include <algorithm>
#include <utility>

#include "importers/policy_rules.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

/// "For all you buy from 1 November to 24 December you have until 31 January to return it"
bool tells_of_buying(const Sentence& s) {
  return s.has(R::returns) &&
         word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                      {"buy",     "order",     "ordered",   "placed",    "kaufen",   "kaufst",
                       "kaufe",   "kauft",     "bestellen", "bestellst", "bestellt", "einkaufe",
                       "achetez", "commandez", "passees",   "koopt",     "bestelt",  "geplaatst",
                       "besteld", "compras",   "compres",   "pedidos"});
}

}  // namespace

/// "Bought between .. and .. can be returned until ..": true when the sentence speaks of dates.
bool ReturnRules::read_season(const Sentence& s) {
  std::vector<const PolicyMark*> days;
  for (const auto& mark : s.marks) {
    if (mark.role == R::day) days.push_back(&mark);
  }
  if (days.empty()) return false;
  SeasonalWindow season;
  const PolicyMark* until = nullptr;
  for (const auto* day : days) {
    const auto* word = last_before(s, R::until, day->begin);
    const bool close = word != nullptr && word->end + 3 >= day->begin;
    const bool upper = word_between(s, day->begin < 3 ? 0 : day->begin - 3, day->begin,
                                    {"and", "und", "et", "en", "to", "through", "-"});
    if (close && !(upper && days.size() > 2 && day != days.back())) until = day;
  }
  if (until == nullptr && days.size() != 2) return true;
  std::vector<const PolicyMark*> bought;
  for (const auto* day : days) {
    if (day != until) bought.push_back(day);
  }
  if (until != nullptr) season.until = until->day;
  if (bought.size() == 2) {
    season.from = bought[0]->day;
    season.to = bought[1]->day;
  } else if (bought.size() == 1) {
    const auto* before = last_before(s, R::between, bought[0]->begin);
    const bool from = before != nullptr && before->end + 3 >= bought[0]->begin;
    (from ? season.from : season.to) = bought[0]->day;
  } else if (!bought.empty()) {
    return true;
  }
  if (season.to && season.until && season.until->year && !season.to->year) {
    season.to->year = *season.until->year - (season.to->month > season.until->month ? 1 : 0);
  }
  if (season.from && !season.to && season.until && season.until->year && !season.from->year) {
    season.from->year = *season.until->year - (season.from->month > season.until->month ? 1 : 0);
  }
  if (season.from && season.to && season.to->year && !season.from->year) {
    season.from->year = *season.to->year - (season.from->month > season.to->month ? 1 : 0);
  }
  if (!season.until) {
    const auto* span = s.first(R::span);
    if (span == nullptr || span->span.unit != DayUnit::days || !span->span.max) return true;
    season.days = span->span.max;
  }
  std::string doubt;
  const auto last = season.until && season.until->year ? season.until : season.to;
  if (last && last->year && frame_.observed) {
    const Day over{date::year{*last->year} / date::month{last->month} / date::day{last->day}};
    if (over < *frame_.observed) doubt = "These dates are over.";
  }
  const bool sold = bought.size() == 2 && until != nullptr && tells_of_buying(s);
  if (!sold && (!s.has_any(R::season, R::event) || (bought.empty() && !s.has(R::season)))) {
    doubt = "It is not said what the date is about.";
  }
  const bool both = word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                                 {"between", "zwischen", "entre", "tussen"});
  if (both && bought.size() == 1) doubt = "Only one of the two dates was understood.";
  doubt_ = s.has(R::aside) ? doubt_ : std::string{};
  claim(s, "seasons", value_text(std::vector<SeasonalWindow>{season}), doubt);
  return true;
}

/// "14 days from delivery, at Christmas longer: ..": the window before the dates.
void ReturnRules::read_beside_season(const Sentence& s) {
  for (const auto& part : parts_of(s)) {
    if (part.has_any(R::day, R::season, R::between)) return;
    if (part.has(R::span) && part.has(R::event)) return read_spans(part);
  }
}

}  // namespace rangebook
