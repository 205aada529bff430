// Rules for times of returns: the window, its season, the time to send off, the time of the refund.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/policy_return_spans.h"
#include "importers/policy_rules.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr int kLongMonths = 6;
constexpr int kLongRefund = 45;
constexpr std::string_view kMissedTime = "The sentence says what holds where it takes longer.";
constexpr std::string_view kUntilRefund = "It may be the time until the refund.";
constexpr std::string_view kFromSending = "It is counted from the day of sending.";
constexpr std::string_view kOneWay = "The sentence speaks of one way back.";

std::optional<CountedFrom> counted_from(std::string_view event) {
  if (event == "delivery") return CountedFrom::delivery;
  if (event == "purchase") return CountedFrom::purchase;
  if (event == "dispatch") return CountedFrom::dispatch;
  return std::nullopt;
}

/// Words that say from when a time is counted.
bool is_counting(std::string_view word) {
  static constexpr std::string_view kWords[] = {
      "after",  "from", "of",    "following", "since",   "upon",    "once",    "when",
      "ab",     "nach", "seit",  "apres",     "compter", "partir",  "suivant", "des",
      "depuis", "na",   "vanaf", "nadat",     "sinds",   "nachdem", "sobald"};
  return std::find(std::begin(kWords), std::end(kWords), word) != std::end(kWords);
}

/// "Within 30 days you can exchange your purchase": what is bought, no day.
bool is_mere_object(const Sentence& s, const PolicyMark& event) {
  if (event.value != "purchase" || event.begin == 0) return false;
  // "U heeft 100 dagen om uw aankoop te retourneren"
  const bool owned =
      event.end == event.begin + 1 && event.begin > 1 && !is_counting(s.word(event.begin - 2)) &&
      word_between(s, event.begin - 1, event.begin, {"uw", "jouw", "je", "your", "votre", "vos"});
  const auto* back = next_after(s, R::returns, event.end);
  if (owned && back != nullptr && back->begin <= event.end + 2) return true;
  return word_between(s, event.begin, event.begin + 1,
                      {"je", "your", "votre", "ihren", "deinen"}) &&
         event.end == event.begin + 2 && !is_counting(s.word(event.begin - 1)) &&
         !is_counting(s.word(event.begin - 2));
}

/// "30 days to send it back, counted from ..": where such a word stands behind the time, 0 if it
/// does not.
std::uint32_t reckoned_at(const Sentence& s, const PolicyMark& span) {
  for (auto at = span.end; at < s.tokens.size(); ++at) {
    const bool reckoned = word_between(
        s, at, at + 1,
        {"counted",   "counting",  "starting",  "beginning", "calculated", "commencing",
         "running",   "gerechnet", "beginnend", "gezahlt",   "berechnet",  "comptes",
         "decomptes", "compter",   "gerekend",  "geteld",    "beginnend",  "ingaand",
         "ingaande",  "contados",  "contando"});
    if (reckoned) return at;
  }
  return 0;
}

/// The event a time is counted from: named behind it, or before it ("ab Erhalt .. 14 Tage").
const PolicyMark* event_of(const Sentence& s, const PolicyMark& span) {
  const auto* next_span = next_after(s, R::span, span.end);
  const auto limit = next_span != nullptr ? next_span->begin : span.end + 12;
  const auto reckoned = reckoned_at(s, span);
  if (reckoned != 0 && (next_span == nullptr || next_span->begin > reckoned)) {
    const auto* late = next_after(s, R::event, reckoned);
    if (late != nullptr && late->begin <= reckoned + 10) return late;
  }
  const PolicyMark* event = next_after(s, R::event, span.end);
  if (event != nullptr && is_mere_object(s, *event)) event = nullptr;
  if (event != nullptr && event->begin <= std::min<std::uint32_t>(limit, span.end + 12)) {
    return event;
  }
  event = last_before(s, R::event, span.begin);
  const bool counts =
      event != nullptr && (is_counting(s.word(event->begin)) ||
                           (event->begin > 0 && is_counting(s.word(event->begin - 1))) ||
                           (event->begin > 1 && is_counting(s.word(event->begin - 2))));
  return event != nullptr && counts && event->begin + 14 >= span.begin &&
                 !between(s, R::span, event->end, span.begin)
             ? event
             : nullptr;
}

/// "after receipt", "from .." behind a time whose event was not understood.
bool is_open(const Sentence& s, const PolicyMark& span) {
  for (auto at = span.end; at < span.end + 4 && !is_stop(s.word(at)); ++at) {
    const bool near =
        at < span.end + 2 ||
        word_between(s, at, at + 1, {"from", "after", "ab", "vanaf", "compter", "nach", "nadat"});
    if (near && is_counting(s.word(at))) return true;
  }
  return false;
}

/// Named close behind the time, and not the return's arrival: counted from what the customer does.
bool is_customers(const PolicyMark* event, const PolicyMark& span) {
  return event != nullptr && event->value != "back" && event->begin < span.end + 5;
}

/// "If it is not processed within ten days", "not collected within a week": of what goes wrong.
bool is_missed_time(const Sentence& s, const PolicyMark& span) {
  const auto* no = last_before(s, R::negation, span.begin);
  if (no == nullptr || !span.open) return false;
  const bool close = no->end + 3 >= span.begin;
  const bool condition = word_between(
      s, 0, no->begin + 1, {"if", "wenn", "falls", "sollte", "si", "als", "indien", "mocht"});
  return close && (condition || no->end + 2 >= span.begin) &&
         !word_between(s, no->begin, span.begin,
                       {"later", "more", "longer", "spater", "plus", "tard"});
}

/// "We refund you within ..", "within .. we refund you", but not "returned for a refund within ..".
bool is_of_refund(const Sentence& s, const PolicyMark& span) {
  const auto* act = last_before(s, R::refund_act, span.begin);
  if (act != nullptr && !between(s, R::returns, act->end, span.begin)) {
    const auto* exchange = last_before(s, R::exchange, act->begin);
    const bool exchange_or = exchange != nullptr && exchange->end + 2 >= act->begin;
    const bool for_refund = act->begin > 0 && s.has_any(R::returns, R::returnable) &&
                            word_between(s, act->begin - 1, act->begin, {"a", "full"});
    if (!exchange_or && !for_refund) return true;
  }
  // "Wir zahlen das Geld binnen .. zurueck"
  const bool around = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::refund_act && one.begin < span.begin && one.end > span.end;
  });
  if (around) return true;
  const auto* behind = next_after(s, R::refund_act, span.end);
  // "Exchange within 14 days, refund within 30 days": of the time behind it
  const auto* own = behind == nullptr ? nullptr : next_after(s, R::span, behind->begin);
  if (own != nullptr && own->begin <= behind->end + 1) return false;
  // "a 30 day money-back guarantee"
  if (behind != nullptr && behind->begin == span.end && s.word(behind->begin) == "money")
    return false;
  // "Send it back within 30 days and within 5 days you have your money"
  const auto* before = last_before(s, R::span, span.begin);
  if (behind != nullptr && before != nullptr && behind->begin <= span.end + 2 &&
      next_after(s, R::event, before->end) != nullptr &&
      next_after(s, R::event, before->end)->begin < span.begin) {
    return true;
  }
  return behind != nullptr && last_before(s, R::returns, span.begin) == nullptr &&
         !between(s, R::returns, span.end, behind->begin);
}

}  // namespace

/// "The period begins on the day you receive the goods": of the window before.
bool ReturnRules::read_start(const Sentence& s) {
  const auto* event = s.first(R::event);
  const bool begins =
      word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                   {"begins", "starts",   "runs",  "counts",  "beginnt", "startet", "lauft",
                    "zahlt",  "commence", "court", "demarre", "debute",  "begint",  "gaat",
                    "start",  "ingaat",   "loopt", "telt",    "empieza", "comienza"});
  if (event == nullptr || !begins || s.has_any(R::span, R::day, R::money)) return false;
  const auto from = counted_from(event->value);
  if (!from) return false;
  const std::string text = value_text(ReturnWindow{1, DayUnit::days, from});
  claims_.complete(prefix_ + "window", std::string_view(text).substr(text.find(" from ")));
  return true;
}

void ReturnRules::read_spans(const Sentence& s) {
  bool window_seen = false;
  std::size_t windows = 0;
  for (std::size_t i = 0; i < s.marks.size(); ++i) {
    if (s.marks[i].role == R::span) read_span(s, i, window_seen);
    windows += s.marks[i].role == R::span ? 1 : 0;
  }
  const auto* can = s.first(R::no_limit);
  if (can != nullptr && windows == 0 && s.has(R::returns) && !s.has(R::negation)) {
    claim(s, "window", "no limit", s.has(R::method) ? std::string(kOneWay) : std::string{});
  }
}

/// The time until the money comes: true when the span is one.
bool ReturnRules::read_refund_time(const Sentence& s, const PolicyMark& span,
                                   const PolicyMark* event) {
  const bool ours = event != nullptr && event->value == "back";
  const bool customers = is_customers(event, span);
  if (customers && asked_refund_ && event->value == "purchase" && !s.has(R::original)) {
    return false;
  }
  const bool received = customers && event->value == "delivery";
  const bool after = after_refund_ && event == nullptr && waits(s);
  const bool of_refund = after || (is_of_refund(s, span) && !(customers && !received));
  if (!ours && !asked_refund_ && !of_refund && !(event == nullptr && lasts(s, span))) return false;
  if (!asked_refund_ && !ours && ends_before_refund(s, span)) return false;
  if (!s.has_any(R::refund, R::refund_act) && !asked_refund_ && !ours && !after) return true;
  DaySpan time = span.span;
  if (time.min == time.max && span.open) time.min.reset();
  const bool sent_back = s.has_any(R::returns, R::returnable);
  std::string doubt;
  if (received && (sent_back || !s.has_any(R::refund, R::refund_act))) doubt = kUntilRefund;
  if (in_row_ && s.has(R::method)) doubt = kOneWay;
  const bool of_money = asked_refund_ || after || s.has_any(R::refund, R::refund_act, R::credit);
  if (!of_money && s.has_any(R::can, R::returns) && unread_words(s) > 0) doubt = kUntilRefund;
  if (is_missed_time(s, span)) doubt = kMissedTime;
  // "We'll email you within a day of receiving your return", "before you chase your refund"
  const bool unnamed = !s.has_any(R::refund, R::refund_act, R::credit) && !asked_refund_;
  if (unnamed || word_between(s, span.end, span.end + 1, {"before", "bevor", "avant", "voordat"})) {
    doubt = kUntilRefund;
  }
  if (is_from_sending(s, span)) doubt = kFromSending;
  if (has_bare_number(s)) doubt = kBareNumber;
  if (time.unit == DayUnit::months || time.max.value_or(0) > kLongRefund) doubt = kUntilRefund;
  claim(s, "refund_within", value_text(time), doubt);
  if (received && sent_back && !asked_refund_ && span.span.min == span.span.max) {
    const ReturnWindow window{span.span.max, span.span.unit, CountedFrom::delivery};
    claim(s, "window", value_text(window), std::string(kUntilRefund));
  }
  return true;
}

/// "In case of withdrawal we repay you within 14 days": what the law says of money, the shop does.
void ReturnRules::read_legal_refund(const Sentence& s) {
  for (const auto& mark : s.marks) {
    if (mark.role != R::span || !mark.span.max) continue;
    const auto* before = last_before(s, R::refund_act, mark.begin);
    const auto* after = next_after(s, R::refund_act, mark.end);
    const bool paid = (before != nullptr) != (after != nullptr);
    const bool alone = next_after(s, R::span, mark.end) == nullptr && s.first(R::span) == &mark;
    const auto* event = event_of(s, mark);
    const bool bought = event != nullptr && event->value != "back";
    if (paid && alone && !bought && !s.has_any(R::have, R::can)) {
      claim(s, "refund_within", value_text(DaySpan{{}, mark.span.max, mark.span.unit}));
    }
  }
}

/// Why a time may not be the window; empty where it is.
std::string ReturnRules::doubt_of_window(const Sentence& s, const PolicyMark& span,
                                         const PolicyMark* event) const {
  const bool long_time = span.span.unit == DayUnit::months && *span.span.max >= kLongMonths;
  const bool own = asked_ || s.has_any(R::returns, R::exchange, R::returnable, R::return_form) ||
                   s.has_any(R::have, R::need, R::statutory);
  if (!own && (long_time || unread_words(s) > (event == nullptr ? 1U : 3U))) {
    return std::string(kUnreadWords);
  }
  // "Ready-to-wear pieces can be returned within 14 days"
  const auto* returnable = s.first(R::returnable);
  if (event == nullptr && returnable != nullptr &&
      unread_words(part_of(s, 0, returnable->begin)) > 0) {
    return std::string(kUnreadWords);
  }
  if (has_bare_number(s)) return std::string(kBareNumber);
  if (is_missed_time(s, span)) return std::string(kMissedTime);
  if (leads_to_refund(s, span)) return std::string(kUntilRefund);
  // "Delivery is refunded if the whole order comes back within 14 days"
  if (s.has(R::first_delivery) && s.has_any(R::refund, R::refund_act) && is_conditional(s)) {
    return std::string(kUntilRefund);
  }
  if (event == nullptr && (gives_back(s) || tells_of_money(s))) return std::string(kUntilRefund);
  // "At Christmas you have 14 days more"
  if (word_between(s, span.end, span.end + 1,
                   {"more", "longer", "extra", "mehr", "langer", "zusatzlich", "meer", "mas"})) {
    return "It may be added to the usual time.";
  }
  if (event == nullptr && tells_of_way(s)) return "It is not clear what the time is about.";
  if (is_late(s)) return "It may be the time after which something else holds.";
  // "We cannot refund it but swap it within 7 days"
  if (is_swap_only(s) && span.span.unit == DayUnit::working_days) {
    return "It may be the time for an exchange alone.";
  }
  const bool swap = s.has(R::exchange) && !s.has_any(R::returns, R::returnable) &&
                    s.has_any(R::negation, R::no_return);
  if (swap || (event == nullptr && !asked_ && is_exchange_alone(s))) {
    return "It may be the time for an exchange alone.";
  }
  if (in_row_ && s.has(R::method) && event == nullptr) return std::string(kOneWay);
  const bool bare = headed_ && is_bare(s);
  const bool about =
      own || bare || s.has_any(R::event, R::refund, R::refund_act, R::tell, R::method);
  const bool short_time = span.span.unit != DayUnit::months && *span.span.max < 5;
  if (!about || short_time) return "It is not clear what the time is about.";
  if (event == nullptr && !asked_ && s.has_any(R::refund, R::refund_act) &&
      !s.has_any(R::returns, R::exchange, R::need, R::have)) {
    return std::string(kUntilRefund);
  }
  if (event == nullptr &&
      (is_open(s, span) || follows_something(s, span) || reckoned_at(s, span) != 0))
    return "It is not clear from when it is counted.";
  return {};
}

void ReturnRules::read_span(const Sentence& s, std::size_t index, bool& window_seen) {
  const PolicyMark& span = s.marks[index];
  // "Our shops are open 7 days"
  if (word_between(s, span.begin < 3 ? 0 : span.begin - 3, span.begin,
                   {"open", "geoffnet", "ouvert", "ouverts", "ouvertes", "geopend", "abiertas"})) {
    return;
  }
  if (is_validity(s, span) || is_of_credit(s, span) || is_of_label(s, span)) return;
  const auto* event = event_of(s, span);
  const bool to_send = !s.has_any(R::refund, R::refund_act) && last_before(s, R::tell, span.begin);
  if (to_send && read_send_back(s, span, window_seen)) return;
  if (is_beyond(s, span) || read_refund_time(s, span, event)) return;
  const bool fixed = span.span.max && (!span.span.min || span.span.min == span.span.max);
  if (!fixed || is_beyond(s, span) || read_send_back(s, span, window_seen)) return;
  if (s.has(R::dispatch) && event == nullptr && !s.has(R::returns)) return;
  if (s.has(R::negation) && !s.has_any(R::can, R::need) && s.has(R::no_return)) return;
  ReturnWindow window{span.span.max, span.span.unit, {}};
  if (event != nullptr) window.from = counted_from(event->value);
  // "28 days from delivery. For New Zealand it's 50 days."
  if (!window.from && prefix_ != "return." && goes_on_) window.from = from_;
  if (window.from) from_ = window.from;
  claim(s, "window", value_text(window), doubt_of_window(s, span, event));
  window_seen = true;
}

/// "Once you have let us know, send it back within 14 days": told first, then sent.
bool follows_notice(const Sentence& s, const PolicyMark& span) {
  const auto* tell = last_before(s, R::tell, span.begin);
  if (tell == nullptr) tell = last_before(s, R::need, span.begin);
  if (tell == nullptr || (tell->role == R::need && tell->value != "request-first")) return false;
  return word_between(s, 0, span.begin,
                      {"once", "after", "then", "nachdem", "sobald", "dann", "danach",
                       "anschliessend", "puis", "ensuite", "alors", "fois", "nadat", "zodra",
                       "eenmaal", "vervolgens", "daarna", "luego", "despues"});
}

/// The time to send the goods off, counted from the customer's word: true when it is one.
bool ReturnRules::read_send_back(const Sentence& s, const PolicyMark& span, bool window_seen) {
  if (!span.span.max || (span.span.min && span.span.min != span.span.max)) return false;
  // "Your bank may take another 5 days"
  const bool of_money = word_between(s, 0, span.begin,
                                     {"bank", "banks", "card", "money", "funds", "refund", "banque",
                                      "argent", "geld", "konto", "rekening", "banco", "dinero"});
  if (of_money) return false;
  const auto* further = last_before(s, R::further, span.begin);
  const std::uint32_t reach = further != nullptr && further->end > further->begin + 1 ? 14 : 4;
  const auto* behind = next_after(s, R::further, span.end);
  const auto* tell = next_after(s, R::tell, span.end);
  const bool returned = last_before(s, R::returns, span.begin) != nullptr ||
                        next_after(s, R::returns, span.end) != nullptr;
  bool counted = false;
  for (auto at = span.end; at < span.end + 3; ++at) counted = counted || is_counting(s.word(at));
  const bool of_notice = counted && tell != nullptr && tell->begin <= span.end + 14 && returned &&
                         event_of(s, span) == nullptr;
  const bool sent = next_after(s, R::returns, span.begin) != nullptr ||
                    last_before(s, R::returns, span.begin) != nullptr;
  const bool noticed = event_of(s, span) == nullptr && sent && follows_notice(s, span);
  const bool second = noticed || (further != nullptr && further->end + reach >= span.begin) ||
                      (behind != nullptr && behind->begin <= span.end + 1 && returned) ||
                      of_notice ||
                      (event_of(s, span) == nullptr && tell != nullptr && window_seen &&
                       last_before(s, R::returns, span.begin) != nullptr);
  if (!second) return false;
  claim(s, "send_back_within", value_text(DaySpan{span.span.max, span.span.max, span.span.unit}));
  return true;
}

}  // namespace rangebook
