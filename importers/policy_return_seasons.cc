// Rules for the seasons of returns: what is bought between two days goes back until a third.
#include <algorithm>
#include <iterator>
#include <utility>
#include <vector>

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

namespace {

using Days = std::vector<const PolicyMark*>;

/// The day by which goods have to be back; nothing if none is said to be.
const PolicyMark* last_day(const Sentence& s, const Days& days) {
  const PolicyMark* until = nullptr;
  for (std::size_t i = 0; i < days.size(); ++i) {
    const auto* day = days[i];
    const auto* word = last_before(s, R::until, day->begin);
    const bool close = word != nullptr && word->end + 3 >= day->begin;
    const auto near =
        std::max(word == nullptr ? 0U : word->end, day->begin < 3 ? 0U : day->begin - 3);
    const bool upper =
        word_between(s, near, day->begin, {"and", "und", "et", "en", "to", "through", "-"});
    // "until 31 January; for what is bought from 1 November until 25 December"
    const bool later = until != nullptr && days.size() > 2;
    const bool range = later && word != nullptr && word->begin == days[i - 1]->end;
    const bool first = later && word_between(s, day->begin - 1, day->begin,
                                             {"from", "vom", "von", "ab", "du", "van", "desde"});
    if (close && !range && !first && !(upper && days.size() > 2 && day != days.back())) until = day;
  }
  return until;
}

/// The years that are not said follow from the one that is.
void complete_years(SeasonalWindow& season) {
  const auto before = [](const SeasonDay& day, const SeasonDay& later) {
    return *later.year - (day.month > later.month ? 1 : 0);
  };
  const bool dated = season.until && season.until->year;
  if (dated && season.to && !season.to->year) season.to->year = before(*season.to, *season.until);
  if (dated && season.from && !season.to && !season.from->year) {
    season.from->year = before(*season.from, *season.until);
  }
  if (season.from && season.to && season.to->year && !season.from->year) {
    season.from->year = before(*season.from, *season.to);
  }
}

}  // namespace

/// Why the dates may not be those of a season; empty where they are.
std::string ReturnRules::doubt_of_season(const Sentence& s, const SeasonalWindow& season,
                                         bool sold) const {
  const bool both = word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                                 {"between", "zwischen", "entre", "tussen"});
  if (both && season.from.has_value() != season.to.has_value()) {
    return "Only one of the two dates was understood.";
  }
  const bool bought = season.from || season.to;
  if (!sold && (!s.has_any(R::season, R::event) || (!bought && !s.has(R::season)))) {
    return "It is not said what the date is about.";
  }
  const auto last = season.until && season.until->year ? season.until : season.to;
  if (!last || !last->year || !frame_.observed) return {};
  const Day over{date::year{*last->year} / date::month{last->month} / date::day{last->day}};
  return over < *frame_.observed ? "These dates are over." : "";
}

/// "Bought between .. and .. can be returned until ..": true when the sentence speaks of dates.
bool ReturnRules::read_season(const Sentence& s) {
  Days days;
  for (const auto& mark : s.marks) {
    if (mark.role == R::day) days.push_back(&mark);
  }
  if (days.empty()) return false;
  const PolicyMark* until = last_day(s, days);
  if (until == nullptr && days.size() != 2) return true;
  Days bought;
  std::copy_if(days.begin(), days.end(), std::back_inserter(bought),
               [&](const PolicyMark* day) { return day != until; });
  if (bought.size() > 2) return true;
  SeasonalWindow season;
  if (until != nullptr) season.until = until->day;
  if (bought.size() == 2) {
    season.from = bought[0]->day;
    season.to = bought[1]->day;
  } else if (bought.size() == 1) {
    const auto* before = last_before(s, R::between, bought[0]->begin);
    const bool from = before != nullptr && before->end + 3 >= bought[0]->begin;
    (from ? season.from : season.to) = bought[0]->day;
  }
  complete_years(season);
  if (!season.until) {
    const auto* span = s.first(R::span);
    if (span == nullptr || span->span.unit != DayUnit::days || !span->span.max) return true;
    season.days = span->span.max;
  }
  const bool sold = bought.size() == 2 && until != nullptr && tells_of_buying(s);
  const std::string doubt = doubt_of_season(s, season, sold);
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
