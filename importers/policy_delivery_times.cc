// Rules for the times of delivery: until the order leaves, and from then to the door.
#include <algorithm>
#include <utility>

#include "importers/byte_search.h"
#include "importers/policy_clause.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr std::string_view kAddedTime = "The time comes on top of another one.";
constexpr std::string_view kNegated = "The sentence says what is not so.";
constexpr std::string_view kOnTrouble = "It may be the time after which to get in touch.";
constexpr std::string_view kFromBefore = "It may be counted from what the sentence before says.";
constexpr std::string_view kLong = "It is long for the time until dispatch.";
constexpr std::string_view kShortest = "It is the shortest time.";
constexpr std::string_view kUntil = "It may be the time until something else.";
constexpr int kLongHandling = 10;
constexpr std::size_t kUnnamedUnread = 3;

/// "Islands: add 2 days"
bool is_added_time(const Sentence& part, const PolicyMark& span) {
  const auto begin = span.begin < 3 ? 0 : span.begin - 3;
  const bool limit = word_between(part, begin, span.begin, {"au", "tout", "tard"});
  const bool adds = std::any_of(part.tokens.begin(), part.tokens.end(), [](const PolicyToken& one) {
    for (const std::string_view stem : {"verlanger", "verleng", "rallong", "prolong", "extend"}) {
      if (one.word.starts_with(stem)) return true;
    }
    return one.word == "adds" || one.word == "alarga";
  });
  return adds || (!limit && word_between(part, begin, span.begin, {"plus"})) ||
         word_between(part, begin, span.begin,
                      {"add", "additional", "extra", "zusatzlich", "zzgl", "zuzuglich", "ajoutez",
                       "ajouter", "supplementaires", "sumar", "anadir"}) ||
         word_between(
             part, span.end, span.end + 2,
             {"more", "extra", "longer", "langer", "mehr", "supplementaires", "adicionales"});
}

/// "A day up to 14 days ahead"
bool is_ahead(const Sentence& part, const PolicyMark& span) {
  return word_between(part, span.end, span.end + 2,
                      {"ahead", "advance", "voraus", "avance", "vooruit", "vooraf"});
}

/// "Allow two days for dispatch": the event ends the time.
bool is_until(const Sentence& part, const PolicyMark& event) {
  return event.begin > 0 && word_between(part, event.begin - 1, event.begin,
                                         {"for", "before", "until", "to", "bis", "zum", "zur",
                                          "vor", "pour", "avant", "voor", "tot"});
}

/// "From the moment you order it is five days": what the time is counted from, before it.
std::string_view start_before(const Sentence& part, const PolicyMark& span) {
  constexpr std::uint32_t kReach = 8;
  const auto* event = last_before(part, R::event, span.begin);
  if (event == nullptr || event->end + kReach < span.begin) return {};
  // "free from 60 euros of purchases": no start
  const auto* amount = last_before(part, R::money, event->begin);
  if (amount != nullptr && amount->end == event->begin) return {};
  const bool start = word_between(part, event->begin < 2 ? 0 : event->begin - 2, event->begin + 1,
                                  {"from", "after", "once", "von", "ab", "nach", "a", "apres",
                                   "des", "na", "vanaf", "tras", "desde"});
  const bool known = event->value == "purchase" || event->value == "dispatch";
  return start && known && !between(part, R::span, event->end, span.begin) ? event->value
                                                                           : std::string_view{};
}

/// "2-3 working days from then": from when the order left, which the words before say.
bool counts_from_then(const Sentence& part, const PolicyMark& span) {
  for (auto at = span.end; at < span.end + 3; ++at) {
    const bool from = word_between(part, at, at + 1, {"from", "ab", "vanaf", "von", "desde"});
    const bool then = word_between(
        part, at + 1, at + 2, {"then", "there", "dann", "da", "dan", "daar", "dort", "entonces"});
    if (from && then) return true;
  }
  return word_between(part, span.end, span.end + 1, {"later", "spater", "afterwards"}) ||
         (part.word(span.end) == "plus" && part.word(span.end + 1) == "tard");
}

/// "After that, allow 1-3 days", behind a sentence on when orders leave.
bool says_after_that(const Sentence& s) {
  const bool after = s.word(0) == "after" || s.word(0) == "from";
  return (after && word_between(s, 1, 2, {"that", "then"})) ||
         (s.word(0) == "ab" && word_between(s, 1, 2, {"dann", "da"})) ||
         (s.word(0) == "vanaf" && s.word(1) == "dan");
}

/// "Please collect within 14 days": how long it is kept.
bool is_kept_time(const Sentence& part, const PolicyMark& span) {
  if (!span.open || part.has_any(R::free, R::money)) return false;
  const auto* kind = last_before(part, R::kind, span.begin);
  const bool point = kind != nullptr && kind->value == "pickup-point";
  const bool fetched = kind != nullptr && kind->value == "collection" && kind->begin > 0;
  if (!point && (!fetched || part.has(R::delivery))) return false;
  // "Collect your parcel from a locker within 7 days"
  const bool verb = word_between(part, 0, kind->begin + 1,
                                 {"collect", "pick", "fetch", "retirer", "retirez", "abholen",
                                  "ophalen", "afhalen", "recoger"});
  return (fetched || verb) && kind->end + 4 >= span.begin &&
         !word_between(part, kind->end, span.begin, {":", "|", "-", "ready", "available"});
}

/// "If you order by noon" names a condition, not a start.
bool is_condition(const Sentence& part, const PolicyMark& event) {
  return event.begin > 0 &&
         word_between(part, event.begin < 2 ? 0 : event.begin - 2, event.begin + 1,
                      {"if", "when", "wenn", "falls", "si", "als", "wanneer", "cuando", "indien"});
}

/// "Delivered tomorrow or the day after"
bool has_alternative(const Sentence& part, const PolicyMark& time) {
  return time.span.max == 1 &&
         word_between(part, time.end, time.end + 1, {"or", "oder", "ou", "of", "o"}) &&
         std::none_of(part.marks.begin(), part.marks.end(),
                      [&](const PolicyMark& one) { return one.begin == time.end + 1; });
}

/// "Orders placed after 8pm": of those alone.
bool is_past_hour(const Sentence& s) {
  for (std::uint32_t at = 0; at + 1 < s.tokens.size(); ++at) {
    const bool past = word_between(s, at, at + 1, {"after", "nach", "apres", "na"});
    if (past && is_ascii_digit(s.word(at + 1)[0])) return true;
  }
  return false;
}

/// "Allow two days for us to ..", "two days before it is ..": until what?
bool is_until_something(const Sentence& part, const PolicyMark& time) {
  const bool until =
      word_between(part, time.end, time.end + 1,
                   {"before", "until", "bevor", "avant", "voordat"}) ||
      (part.word(time.end) == "voor" &&
       !word_between(part, time.end + 1, time.end + 2, {"je", "u", "jou", "jullie"})) ||
      (part.word(time.end) == "for" && part.word(time.end + 1) == "us");
  // "Two days to make each bag"
  const bool made = word_between(part, time.end, time.end + 4,
                                 {"make", "sew", "knit", "craft", "produce", "finish", "print",
                                  "herstellen", "fertigen", "nahen", "fabriquer", "confectionner",
                                  "coudre", "maken", "naaien", "hacer", "confeccionar"});
  return made || (until && !part.has_any(R::event, R::next_day));
}

/// "1-3 days in the north island": a place that was not understood.
bool is_of_unread_place(const Sentence& part, const PolicyMark& time) {
  const bool marked = std::any_of(part.marks.begin(), part.marks.end(),
                                  [&](const PolicyMark& one) { return one.begin == time.end; });
  if (part.word(time.end) != "in" || marked) return false;
  const auto size = static_cast<std::uint32_t>(part.tokens.size());
  const auto end = std::min(time.end + 4, size);
  const auto place = part_of(part, time.end + 1, std::max(end, time.end + 1));
  return place.marks.empty() && unread_words(place) > 0;
}

/// Whether a span is the time until the order leaves; `counted`: it says from when it counts.
bool until_dispatch(const Sentence& s, const Sentence& part, const PolicyMark& mark, bool counted) {
  if (counts_from_then(part, mark)) return false;
  bool dispatch = false;
  for (const auto& other : part.marks) {
    if (other.end > mark.begin) break;
    if (other.role == R::dispatch) dispatch = true;
    if (other.role == R::delivery) dispatch = false;
  }
  for (const auto& other : part.marks) {
    const bool behind = other.begin >= mark.end && other.begin <= mark.end + 3;
    if (!behind) continue;
    if (other.role == R::delivery) dispatch = false;
    if (other.role == R::dispatch) dispatch = true;
  }
  // "Allow two days for us to get it out of the door"
  const auto* later = next_after(part, R::dispatch, mark.end);
  dispatch = dispatch || (!counted && later != nullptr && later->begin <= mark.end + 8 &&
                          !between(part, R::delivery, mark.end, later->begin) &&
                          !between(part, R::span, mark.end, later->begin));
  // "We send every order within two days"
  const auto* sent = part.first(R::sending);
  const bool arrives =
      part.has(R::kind) || std::any_of(part.marks.begin(), part.marks.end(), [](const auto& one) {
        return one.role == R::event && one.value != "payment" && one.value != "purchase";
      });
  const bool soon = mark.open || mark.span.max == 1;  // "then we send it the next working day"
  if (!counted && !arrives && sent != nullptr && sent->end <= mark.begin && soon) return true;
  const bool understood = unread_words(part) == 0;
  const bool elsewhere = !counted && s.first(R::dispatch) != nullptr && understood;
  return dispatch || (elsewhere && !part.has_any(R::kind) && !part.has(R::delivery));
}

/// Why a time may not be the way to the door; empty where it is.
std::string doubt_of_transit(const Sentence& s, const Sentence& part, const PolicyMark& mark) {
  const auto* no = last_before(part, R::negation, mark.begin);
  const auto* from = last_before(part, R::from, mark.begin);
  const DaySpan& span = mark.span;
  const bool shortest =
      from != nullptr && from->end == mark.begin && !mark.open && span.min == span.max;
  // "Collect it within 7 days of us telling you"
  const auto* kind = part.first(R::kind);
  const bool fetched = kind != nullptr && kind->value == "collection";
  const auto why = [&]() -> std::string_view {
    if (s.has(R::tell) && (fetched || !part.has_any(R::delivery, R::kind))) return kOnTrouble;
    if (no != nullptr && part.word(no->begin) != "noch") return kNegated;
    const auto* item = part.first(R::item);
    const bool own = item != nullptr && item->begin > 0 &&
                     word_between(part, item->begin - 1, item->begin,
                                  {"your", "je", "uw", "jouw", "ihre", "deine", "vos", "votre"});
    if (item != nullptr && !own) return kSomeItems;
    if (is_until_something(part, mark) || is_kept_time(part, mark)) return kUntil;
    if (has_bare_number(s)) return kBareNumber;
    // "Orders over 500 need a day to clear security checks"
    const bool named = s.has_any(R::delivery, R::kind, R::dispatch, R::region, R::next_day) ||
                       s.has(R::event) || s.kind == PolicyLineKind::row;
    if (!named && unread_words(s) >= kUnnamedUnread) return kUnreadWords;
    if (is_of_unread_place(part, mark)) return kUnreadWords;
    if (has_alternative(part, mark)) return kHedged;
    if (is_added_time(part, mark)) return kAddedTime;
    return shortest ? kShortest : std::string_view{};
  };
  return std::string(why());
}

}  // namespace

void DeliveryRules::read_spans(const Sentence& s, const Clause& clause) {
  if (s.has(R::negation) && s.has(R::outside)) return;
  for (const auto& mark : clause.part.marks) {
    if (mark.role == R::next_day) read_next_day(s, clause, mark);
    const bool same_day = mark.role == R::kind && mark.value == "same-day";
    if (same_day && clause.option.kind == mark.value &&
        !clause.part.has_any(R::span, R::negation)) {
      claim(s, clause.option, "transit", "0 days", {}, true);
    }
    if (mark.role == R::span) read_span(s, clause, mark);
  }
}

/// "Next-day delivery": the name says how long it takes.
void DeliveryRules::read_next_day(const Sentence& s, const Clause& clause, const PolicyMark& mark) {
  const bool fuller = mark.span.unit == DayUnit::days &&
                      std::any_of(s.marks.begin(), s.marks.end(), [](const PolicyMark& one) {
                        return one.role == R::next_day && one.span.unit == DayUnit::working_days;
                      });
  if (fuller || clause.part.has_any(R::span, R::negation)) return;
  claim(s, clause.option, "transit", value_text(mark.span), {}, true);
}

void DeliveryRules::read_span(const Sentence& s, const Clause& clause, const PolicyMark& mark) {
  if (mark.span.unit == DayUnit::months || mark.span.max.value_or(0) > 60) return;
  if (is_beyond(clause.part, mark) || is_ahead(clause.part, mark)) return;
  const bool of_returns = clause.part.has_any(R::statutory, R::returns) &&
                          !clause.part.has_any(R::delivery, R::kind, R::dispatch);
  if (of_returns) return;  // "30 days to return"
  const auto* have = last_before(clause.part, R::have, mark.begin);
  if (have != nullptr && have->end == mark.begin && clause.part.has(R::kind)) return;
  const auto* event = next_after(clause.part, R::event, mark.end);
  const bool counted = event != nullptr && event->begin < mark.end + 6;
  const bool leaves = counted && event->value == "dispatch";
  const bool dispatch =
      leaves ? is_until(clause.part, *event)
             : until_dispatch(s, clause.part, mark,
                              counted && event->value != "purchase" && event->value != "payment");
  DaySpan span = mark.span;
  if (mark.open && span.min == span.max) span.min.reset();
  if (dispatch) return claim_handling(s, clause.option, span);
  claim(s, clause.option, "transit", value_text(span), doubt_of_transit(s, clause.part, mark));
  if (!counted) {
    auto start = start_before(clause.part, mark);
    const auto* only = s.first(R::span);
    const bool one = std::count_if(s.marks.begin(), s.marks.end(), [](const PolicyMark& other) {
                       return other.role == R::span;
                     }) == 1;
    if (start.empty() && one) start = start_before(s, *only);
    if (!start.empty()) claim(s, clause.option, "transit_from", std::string(start));
  }
  const auto* left = s.first(R::dispatch);
  const bool then = (left != nullptr || left_) && counts_from_then(clause.part, mark) &&
                    word_between(clause.part, mark.end, mark.end + 4, {"then", "dann", "dan"});
  if (leaves || then) claim(s, clause.option, "transit_from", "dispatch");
  if (!leaves && !then && left_ && says_after_that(s)) {
    claim(s, clause.option, "transit_from", "dispatch", std::string(kFromBefore));
  }
  const bool ordered = counted && event->value == "purchase" && !is_condition(clause.part, *event);
  if (ordered) claim(s, clause.option, "transit_from", "purchase");
}

void DeliveryRules::claim_handling(const Sentence& s, const Option& option, const DaySpan& span) {
  PolicyClaim fact{"handling", value_text(span), s.text, s.byte, doubt_, false};
  if (span.max.value_or(span.min.value_or(0)) > kLongHandling) fact.doubt = kLong;
  // "before noon the same day, after noon the next"
  const bool by_hour = std::any_of(s.marks.begin(), s.marks.end(), [](const PolicyMark& one) {
    return one.role == R::kind && one.value == "same-day";
  });
  const bool late = span.max == 1 && is_past_hour(s);
  if ((by_hour || late) && fact.doubt.empty()) fact.doubt = kHedged;
  if (s.has_any(R::kind, R::region)) return claim(s, option, "handling", fact.text, fact.doubt);
  for_all_.push_back(std::move(fact));
}

}  // namespace rangebook
