// The statements of a sentence about delivery: where one ends, and which of them are left out or
// belong to what another one names.
#include <algorithm>
#include <utility>

#include "importers/policy_clause.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

/// A sign that opens or closes a remark without a figure, a way or a place: "(after discounts)".
bool is_remark(const Sentence& s, std::uint32_t at) {
  const bool opens = s.word(at) == "(";
  if (!opens && s.word(at) != ")") return false;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  std::uint32_t begin = at;
  std::uint32_t end = at;
  while (opens && end < size && s.word(end) != ")") ++end;
  while (!opens && begin > 0 && s.word(begin) != "(") --begin;
  if (end >= size || s.word(begin) != "(") return false;
  const auto inner = part_of(s, begin, end);
  return !has_fact(inner) && !inner.has_any(R::kind, R::region, R::next_day);
}

/// Within the brackets around places behind an amount: "4.99 (Germany)".
bool is_place_remark(const Sentence& s, std::uint32_t begin, std::uint32_t at) {
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  std::uint32_t open = at;
  while (open > begin && s.word(open) != "(" && (open == at || s.word(open) != ")")) --open;
  std::uint32_t close = at;
  while (close < size && s.word(close) != ")" && (close == at || s.word(close) != "(")) ++close;
  if (s.word(open) != "(" || s.word(close) != ")") return false;
  const auto inner = part_of(s, open, close);
  const auto before = part_of(s, begin, open);
  return inner.has(R::region) && !has_fact(inner) && !inner.has(R::kind) && has_fact(before) &&
         !before.has(R::region);
}

/// "9.00 for Spain, Italy and France": a comma within a list of places, none of which has a figure
/// of its own.
bool is_place_list(const Sentence& s, std::uint32_t comma) {
  const auto place_at = [&](std::uint32_t at) {
    return std::find_if(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
      return one.role == R::region && one.begin == at;
    });
  };
  const bool behind = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::region && one.end == comma;
  });
  auto at = comma + 1;
  bool joined = false;
  for (auto place = place_at(at); place != s.marks.end(); place = place_at(at)) {
    at = place->end;
    const bool joint = is_joint(s, at);
    joined = joined || joint;
    if ((joint || s.word(at) == ",") && place_at(at + 1) != s.marks.end()) ++at;
  }
  return behind && joined && (at >= s.tokens.size() || is_stop(s.word(at))) && s.word(at) != ":";
}

/// True when the token at `at` divides two statements of a sentence.
bool divides(const Sentence& s, std::uint32_t begin, std::uint32_t at) {
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  const std::string_view word = s.word(at);
  if (!is_stop(word) && !is_joint(s, at)) return false;
  const bool inside = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    const bool joint = one.role == R::further && one.end == one.begin + 1;  // "puis"
    return one.begin <= at && at < one.end && !joint;
  });
  if (inside || is_remark(s, at) || is_place_remark(s, begin, at)) return false;
  const auto before = part_of(s, begin, at);
  if (is_stop(word)) {
    const auto after = part_of(s, at + 1, std::min(at + 5, size));
    // "12.00 for the highlands, islands and .."
    const bool goes_on = !before.marks.empty() && before.marks.back().role == R::region &&
                         at + 1 < size && is_unread(s, at + 1);
    const bool places = (!has_fact(before) || goes_on || is_place_list(s, at)) &&
                        before.has(R::region) && after.has(R::region) && !after.marks.empty() &&
                        after.marks.front().role == R::region;
    return !(word == "," && places);
  }
  const auto after = part_of(s, at + 1, size);
  const bool places = !before.marks.empty() && before.marks.back().role == R::region &&
                      !after.marks.empty() && after.marks.front().role == R::region;
  if (places) return false;
  const bool amounts = !before.marks.empty() && before.marks.back().role == R::money &&
                       !after.marks.empty() && after.marks.front().role == R::money;
  // "between 20 and 40", but not "4.95 up to 25 and 2.95 from 25"
  const auto& low = amounts ? before.marks.back().money : std::nullopt;
  const auto& high = amounts ? after.marks.front().money : std::nullopt;
  const bool falls = low && high && low->currency == high->currency && high->minor < low->minor;
  const bool range = amounts && !falls;
  return !range && has_fact(before) &&
         after.has_any(R::money, R::free, R::span, R::kind, R::region);
}

}  // namespace

std::vector<DeliveryRules::Clause> DeliveryRules::clauses_of(const Sentence& s) const {
  std::vector<Clause> clauses;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  std::uint32_t begin = 0;
  for (std::uint32_t at = 0; at <= size; ++at) {
    if (at != size && !divides(s, begin, at)) continue;
    if (at > begin) {
      auto& clause = clauses.emplace_back();
      clause.part = part_of(s, begin, at);
      clause.in_brackets = begin > 0 && s.word(begin - 1) == "(" && s.word(at) == ")";
    }
    begin = at + 1;
  }
  return clauses;
}

/// Clauses about something else, and what follows one that states nothing itself: "For an order in
/// advance, allow six weeks".
void DeliveryRules::leave_out_asides(std::vector<Clause>& clauses) {
  bool before = false;
  bool after = false;
  std::erase_if(clauses, [&](const Clause& one) {
    const bool aside = one.part.has(R::aside);
    // "Shortening takes three days and costs 15.00"
    const bool own = one.part.has_any(R::delivery, R::kind, R::region);
    const bool out = aside || before || (after && !own);
    before = aside && !has_fact(one.part);
    after = out;
    return out;
  });
}

/// "A flat 7.50 (12.50 rural)": an amount for something that was not understood.
void DeliveryRules::leave_out_remarks(const Sentence& s, std::vector<Clause>& clauses) {
  const bool other = std::any_of(clauses.begin(), clauses.end(), [](const Clause& one) {
    return !one.in_brackets && one.part.has(R::money);
  });
  if (!other) return;
  std::erase_if(clauses, [&](const Clause& one) {
    const bool only = std::all_of(one.part.marks.begin(), one.part.marks.end(),
                                  [](const auto& mark) { return mark.role == R::money; });
    if (!one.in_brackets || !one.part.has(R::money) || !only || unread_words(one.part) == 0) {
      return false;
    }
    claim(s, section_, "fee", value_text(*one.part.first(R::money)->money),
          std::string(kUnknownWay));
    return true;
  });
}

/// "Free in the UK (excluding Northern Ireland, where it is 6.00)": of the place left out.
void DeliveryRules::give_to_excepted(std::vector<Clause>& clauses) {
  for (std::size_t i = 1; i < clauses.size(); ++i) {
    const Sentence& left_out = clauses[i - 1].part;
    const bool there = word_between(
        clauses[i].part, 0, 2, {"where", "there", "wo", "dort", "ou", "waar", "daar", "donde"});
    if (!there || !left_out.has(R::outside) || !has_fact(clauses[i].part)) continue;
    std::vector<std::string> places;
    for (const auto& mark : left_out.marks) {
      if (mark.role == R::region && mark.begin >= left_out.first(R::outside)->begin) {
        places.emplace_back(mark.value);
      }
    }
    if (!places.empty()) clauses[i].option.regions = places;
    excepted_ = !places.empty();
  }
}

/// "You get it the next day for 6.95": a fast way, whose name is not said.
bool DeliveryRules::is_fast_unnamed(const Clause& clause) {
  const auto* time = clause.part.first(R::span);
  const bool soon = is_soon(time) && !time->open;
  return soon && clause.option.kind.empty() && clause.part.has(R::money) &&
         !clause.part.has_any(R::free, R::over, R::from, R::or_more, R::order, R::dispatch) &&
         clause.part.kind == PolicyLineKind::text;
}

/// "You have it tomorrow; next-day delivery costs 6.90": the time is of what is named behind it.
void DeliveryRules::give_to_next_day(std::vector<Clause>& clauses) {
  for (std::size_t i = 0; i + 1 < clauses.size(); ++i) {
    const auto* time = clauses[i].part.first(R::span);
    const auto* kind = clauses[i + 1].part.first(R::kind);
    const bool soon = is_soon(time);
    const bool named = kind != nullptr && kind->value == "next-day";
    if (soon && named && !clauses[i].part.has_any(R::kind, R::money, R::dispatch)) {
      clauses[i].option = clauses[i + 1].option;
    }
  }
}

/// "Need it sooner? Have it the next day for 6.95": of a way of its own, where the usual one has
/// its price.
void DeliveryRules::give_to_faster(const Sentence& s, std::vector<Clause>& clauses) const {
  const auto* fee = s.first(R::money);
  const auto* usual = claims_.stated("delivery.standard.fee");
  if (fee == nullptr || !fee->money || usual == nullptr || s.has_any(R::kind, R::region)) return;
  if (s.has_any(R::free, R::over, R::or_more, R::under) || unread_words(s) > 1) return;
  const bool soon = std::any_of(s.marks.begin(), s.marks.end(), [](const PolicyMark& one) {
    return one.role == R::span && is_soon(&one);
  });
  if (!soon || usual->text == value_text(*fee->money)) return;
  for (auto& clause : clauses) {
    if (clause.option.kind.empty()) clause.option.kind = "next-day";
  }
}

}  // namespace rangebook
