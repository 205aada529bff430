// Rules for windows, seasons, items, conditions and refunds. Costs stand in policy_return_costs.cc.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/policy_rules.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr std::string_view kHedged = "It holds for some customers, orders or times only.";
constexpr std::string_view kLegal =
    "The sentence speaks of the legal right, not of the shop's own.";
constexpr std::string_view kAside = "The sentence may be about something else.";
constexpr int kLongMonths = 6;
constexpr int kLongRefund = 45;
constexpr std::string_view kUntilRefund = "It may be the time until the refund.";
constexpr std::string_view kOneWay = "The sentence speaks of one way back.";
constexpr std::string_view kSomeItems = "The sentence speaks of certain items.";

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

/// The event a time is counted from: named behind it, or before it ("ab Erhalt .. 14 Tage").
const PolicyMark* event_of(const Sentence& s, const PolicyMark& span) {
  const auto* next_span = next_after(s, R::span, span.end);
  const auto limit = next_span != nullptr ? next_span->begin : span.end + 12;
  const PolicyMark* event = next_after(s, R::event, span.end);
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

/// One time, longer than the 14 days of Directive 2011/83/EU article 9: the shop's own.
bool exceeds_law(const Sentence& s) {
  const auto* span = s.first(R::span);
  if (span == nullptr || next_after(s, R::span, span->end) != nullptr) return false;
  const int days = span->span.max.value_or(0) * (span->span.unit == DayUnit::days ? 1 : 0);
  return days > 14 && days <= 100;
}

/// "Free returns | Pay later": what is aside stands by itself, without a figure.
bool is_listed(const Sentence& s) {
  const auto* aside = s.first(R::aside);
  if (!word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()), {"|"})) return false;
  std::uint32_t begin = aside->begin;
  std::uint32_t end = aside->end;
  while (begin > 0 && s.word(begin - 1) != "|") --begin;
  while (end < s.tokens.size() && s.word(end) != "|") ++end;
  return !part_of(s, begin, end).has_any(R::span, R::money, R::returns, R::refund);
}

/// "A voucher, valid for a year"
bool is_validity(const Sentence& s, const PolicyMark& span) {
  return word_between(clause_around(s, span), 0, static_cast<std::uint32_t>(s.tokens.size()),
                      {"valid", "valable", "valables", "gultig", "geldig", "valido", "valida",
                       "validos", "expire", "expires"}) &&
         !s.has(R::returns);
}

/// "If you return it after 14 days but within 30": of what comes too late.
bool is_late(const Sentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::span && one.begin > 0 &&
           word_between(s, one.begin - 1, one.begin, {"after", "apres", "despues"});
  });
}

/// "unless the goods are faulty"
bool is_exception(const Sentence& s, const PolicyMark& faulty) {
  return word_between(
      s, faulty.begin < 6 ? 0 : faulty.begin - 6, faulty.begin,
      {"unless", "except", "sauf", "ausser", "tenzij", "behalve", "denn", "hors", "salvo"});
}

}  // namespace

void ReturnRules::claim(const Sentence& s, std::string_view name, std::string text,
                        std::string doubt) {
  if (doubt.empty()) doubt = doubt_;
  claims_.add({prefix_ + std::string(name), std::move(text), s.text, s.byte, std::move(doubt)});
}

void ReturnRules::set_region(const Sentence& s) {
  prefix_ = "return.";
  const auto* region = s.first(R::region);
  if (region == nullptr || is_home(region->value, frame_)) return;
  std::string key(region->value);
  std::transform(key.begin(), key.end(), key.begin(),
                 [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; });
  if (s.has(R::outside)) key = "WORLD";
  prefix_ = "return." + key + ".";
}

void ReturnRules::read_row(const Sentence& s, const Sentence& header) {
  in_row_ = true;
  asked_refund_ = header.has_any(R::refund, R::refund_act);
  read(s);
  in_row_ = false;
  asked_refund_ = false;
}

namespace {

/// "From here returns are free; customers abroad pay for them": where the places part.
std::uint32_t place_border(const Sentence& s, const PolicyFrame& frame) {
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  for (std::uint32_t at = 0; at < size; ++at) {
    if (s.word(at) != ";") continue;
    const auto* before = last_before(s, R::region, at);
    const auto* after = next_after(s, R::region, at);
    const bool part = before != nullptr && after != nullptr &&
                      is_home(before->value, frame) != is_home(after->value, frame);
    if (part) return at;
  }
  return 0;
}

}  // namespace

void ReturnRules::read(const Sentence& s, bool goes_on) {
  if (const auto border = place_border(s, frame_); border > 0) {
    read(part_of(s, 0, border), goes_on);
    return read(part_of(s, border + 1, static_cast<std::uint32_t>(s.tokens.size())), true);
  }
  if (!goes_on) methods_.clear();
  if (s.has(R::example)) return;
  const auto* faulty = s.first(R::faulty);
  if (faulty != nullptr && !s.has_any(R::unless_faulty, R::no_return, R::need) &&
      !is_exception(s, *faulty)) {
    return;
  }
  set_region(s);
  doubt_.clear();
  if (s.has(R::hedge)) doubt_ = kHedged;
  const bool own = s.has_any(R::returns, R::refund, R::no_return);
  if (!own && s.has_any(R::aside, R::other_service)) return;
  if (aside_ || (s.has(R::aside) && !is_listed(s))) doubt_ = kAside;
  if (s.has(R::statutory) && s.has(R::item) && s.has(R::no_return) && !s.has(R::span)) {
    read_items(s);
  }
  if (read_start(s)) return;
  if (s.has(R::statutory)) return read_legal(s);
  if (!read_exceptions(s)) read_rules(s);
}

/// "The period begins on the day you receive the goods": of the window before.
bool ReturnRules::read_start(const Sentence& s) {
  const auto* event = s.first(R::event);
  const bool begins =
      word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                   {"begins", "starts", "runs", "beginnt", "lauft", "commence", "court", "debute",
                    "begint", "gaat", "start", "ingaat", "empieza", "comienza"});
  if (event == nullptr || !begins || s.has_any(R::span, R::day, R::money)) return false;
  const auto from = counted_from(event->value);
  if (!from) return false;
  const std::string text = value_text(ReturnWindow{1, DayUnit::days, from});
  claims_.complete(prefix_ + "window", std::string_view(text).substr(text.find(" from ")));
  return true;
}

/// The legal right is asked. "Besides the legal 14 days we give you 60": what follows is the
/// shop's.
void ReturnRules::read_legal(const Sentence& s) {
  const auto* legal = s.first(R::statutory);
  const auto* first = next_after(s, R::span, legal->end);
  const auto* beside = last_before(s, R::beside, legal->begin);
  const auto* last_legal = first == nullptr ? nullptr : last_before(s, R::statutory, first->begin);
  if (beside != nullptr && first != nullptr && last_legal != nullptr &&
      next_after(s, R::span, first->end) != nullptr) {
    return read_rules(part_of(s, first->end, static_cast<std::uint32_t>(s.tokens.size())));
  }
  // "Besides your legal rights we give you 60 days"
  if (beside != nullptr && first != nullptr &&
      word_between(s, legal->end, first->begin, {"we", "our", "wir", "unser", "nous", "wij"})) {
    return read_rules(part_of(s, legal->end, static_cast<std::uint32_t>(s.tokens.size())));
  }
  if (exceeds_law(s)) return read_rules(s);
  for (const auto& mark : s.marks) {
    const bool window = mark.role == R::span && mark.span.max && mark.span.min == mark.span.max;
    if (read_send_back(s, mark, false)) continue;
    if (!window || *mark.span.max < 7) continue;
    claim(s, "window", value_text(ReturnWindow{mark.span.max, mark.span.unit, {}}),
          std::string(kLegal));
  }
}

void ReturnRules::read_rules(const Sentence& s) {
  const bool items = read_items(s);
  read_needs(s);
  if (read_season(s)) return read_beside_season(s);
  if (items && !s.has(R::span)) return;
  if (items) doubt_ = kSomeItems;
  read_spans(s);
  read_costs(s);
  read_refund(s);
  read_rest(s);
}

void ReturnRules::ask(const Sentence* question) {
  asked_ = question != nullptr && question->has_any(R::returns, R::exchange);
  asked_refund_ = question != nullptr && question->has_any(R::refund, R::refund_act) &&
                  !question->has(R::returns);
}

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
  if (!s.has_any(R::season, R::event) || (bought.empty() && !s.has(R::season))) {
    doubt = "It is not said what the date is about.";
  }
  const bool both = word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                                 {"between", "zwischen", "entre", "tussen"});
  if (both && bought.size() == 1) doubt = "Only one of the two dates was understood.";
  doubt_.clear();
  claim(s, "seasons", value_text(std::vector<SeasonalWindow>{season}), doubt);
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

void ReturnRules::read_span(const Sentence& s, std::size_t index, bool& window_seen) {
  const PolicyMark& span = s.marks[index];
  if (is_validity(s, span)) return;
  const auto* event = event_of(s, span);
  const auto* act = last_before(s, R::refund_act, span.begin);
  const auto* act_behind = next_after(s, R::refund_act, span.end);
  const bool ours = event != nullptr && event->value == "back";
  const bool customers = event != nullptr && !ours && event->begin < span.end + 5;
  const bool return_left = last_before(s, R::returns, span.begin) != nullptr;
  const auto* exchange = act == nullptr ? nullptr : last_before(s, R::exchange, act->begin);
  const bool exchange_or = exchange != nullptr && exchange->end + 2 >= act->begin;
  // "can be returned for a refund within 14 days"
  const bool for_refund = act != nullptr && act->begin > 0 &&
                          s.has_any(R::returns, R::returnable) &&
                          word_between(s, act->begin - 1, act->begin, {"a", "full"});
  const bool act_close = act != nullptr && !exchange_or && !for_refund &&
                         !between(s, R::returns, act->end, span.begin);
  const bool act_first =
      act_behind != nullptr && !return_left && !between(s, R::returns, span.end, act_behind->begin);
  const bool bought = customers && event->value != "delivery";
  const bool received = customers && event->value == "delivery";
  const bool sent_back = s.has_any(R::returns, R::returnable);
  const bool lasts = event == nullptr && !s.marks.empty() && s.marks.front().role == R::refund &&
                     word_between(s, s.marks.front().end, span.begin,
                                  {"take", "takes", "dauert", "dauern", "duurt", "duren", "prend",
                                   "prennent", "tarda", "tardan"});
  if (ours || asked_refund_ || lasts || ((act_close || act_first) && !bought)) {
    if (s.has_any(R::refund, R::refund_act) || asked_refund_ || ours) {
      DaySpan time = span.span;
      if (time.min == time.max && span.open) time.min.reset();
      std::string doubt;
      if (received && !ours && (sent_back || !s.has(R::refund))) doubt = kUntilRefund;
      if (in_row_ && s.has(R::method)) doubt = kOneWay;
      if (time.unit == DayUnit::months || time.max.value_or(0) > kLongRefund) doubt = kUntilRefund;
      claim(s, "refund_within", value_text(time), doubt);
      if (received && sent_back && !asked_refund_ && span.span.min == span.span.max) {
        claim(s, "window",
              value_text(ReturnWindow{span.span.max, span.span.unit, CountedFrom::delivery}),
              std::string(kUntilRefund));
      }
    }
    return;
  }
  const bool fixed = span.span.max && (!span.span.min || span.span.min == span.span.max);
  if (!fixed) return;
  if (is_beyond(s, span)) return;
  if (read_send_back(s, span, window_seen)) return;
  if (s.has(R::dispatch) && event == nullptr && !s.has(R::returns)) return;
  if (s.has(R::negation) && !s.has_any(R::can, R::need) && s.has(R::no_return)) return;
  ReturnWindow window{span.span.max, span.span.unit, {}};
  if (event != nullptr) window.from = counted_from(event->value);
  bool open = false;
  for (auto at = span.end; at < span.end + 4 && !is_stop(s.word(at)); ++at) {
    const bool near =
        at < span.end + 2 ||
        word_between(s, at, at + 1, {"from", "after", "ab", "vanaf", "compter", "nach", "nadat"});
    open = open || (event == nullptr && near && is_counting(s.word(at)));
  }
  const bool about = s.has_any(R::returns, R::exchange, R::need, R::event, R::returnable) ||
                     s.has_any(R::refund, R::refund_act, R::tell, R::method) ||
                     s.has_any(R::statutory, R::have) || asked_;
  std::string doubt;
  if (open) doubt = "It is not clear from when it is counted.";
  if (event == nullptr && !asked_ && s.has_any(R::refund, R::refund_act) &&
      !s.has_any(R::returns, R::exchange, R::need, R::have)) {
    doubt = kUntilRefund;
  }
  if (!about || (window.unit != DayUnit::months && *window.count < 5)) {
    doubt = "It is not clear what the time is about.";
  }
  if (in_row_ && s.has(R::method) && event == nullptr) doubt = kOneWay;
  const bool told = asked_ || s.has_any(R::returns, R::exchange, R::returnable, R::return_form) ||
                    s.has_any(R::have, R::need, R::statutory);
  // "We cannot refund it but swap it within 7 days"
  const bool swap = s.has(R::exchange) && !s.has_any(R::returns, R::returnable) &&
                    s.has_any(R::negation, R::no_return);
  if (swap) doubt = "It may be the time for an exchange alone.";
  if (is_late(s)) doubt = "It may be the time after which something else holds.";
  const bool years = window.unit == DayUnit::months && *window.count >= kLongMonths;
  if (!told && (years || unread_words(s) > (event == nullptr ? 1U : 3U))) doubt = kUnreadWords;
  claim(s, "window", value_text(window), doubt);
  window_seen = true;
}

/// The time to send the goods off, counted from the customer's word: true when it is one.
bool ReturnRules::read_send_back(const Sentence& s, const PolicyMark& span, bool window_seen) {
  if (!span.span.max || (span.span.min && span.span.min != span.span.max)) return false;
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
  const bool second = (further != nullptr && further->end + reach >= span.begin) ||
                      (behind != nullptr && behind->begin <= span.end + 1 && returned) ||
                      of_notice ||
                      (event_of(s, span) == nullptr && tell != nullptr && window_seen &&
                       last_before(s, R::returns, span.begin) != nullptr);
  if (!second) return false;
  claim(s, "send_back_within", value_text(DaySpan{span.span.max, span.span.max, span.span.unit}));
  return true;
}

/// "14 days from delivery, at Christmas longer: ..": the window before the dates.
void ReturnRules::read_beside_season(const Sentence& s) {
  for (const auto& part : parts_of(s)) {
    if (part.has_any(R::day, R::season, R::between)) return;
    if (part.has(R::span) && part.has(R::event)) return read_spans(part);
  }
}

namespace {

/// A voucher or the like; "credited to your card" is none.
bool offers_credit(const Sentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    const bool money = word_between(s, one.begin, one.end, {"credited"}) ||
                       word_between(s, one.end, one.end + 1, {"to", "on", "onto"});
    return one.role == R::credit && !money;
  });
}

}  // namespace

void ReturnRules::read_refund(const Sentence& s) {
  if (!asked_refund_ && !s.has_any(R::refund, R::refund_act, R::returns, R::no_return) &&
      !(s.has(R::credit) && s.has(R::only))) {
    return;
  }
  const auto* original = s.first(R::original);
  const bool to_card = original != nullptr && !clause_around(s, *original).has(R::negation);
  const auto* denied = last_before(s, R::negation, static_cast<std::uint32_t>(s.tokens.size()));
  const auto* credit = denied == nullptr ? nullptr : next_after(s, R::credit, denied->end);
  const auto* refund = denied == nullptr ? nullptr : s.first(R::refund);
  const auto* refusal = s.first(R::no_return);  // "we don't refund"
  const bool no_refund = refusal != nullptr && !s.has(R::item) &&
                         word_between(s, refusal->begin, refusal->end, {"refund", "refunds"}) &&
                         next_after(s, R::credit, refusal->end) != nullptr;
  // "Money is not given back, you get a voucher"
  const bool credit_only = credit != nullptr && refund != nullptr && !s.has(R::item) &&
                           clause_around(s, *refund).has(R::negation) &&
                           !clause_around(s, *credit).has_any(R::negation, R::refund);
  if (to_card && (s.has_any(R::refund, R::refund_act) || asked_refund_)) {
    claim(s, "refund",
          offers_credit(s) && !s.has(R::only) ? "original payment, credit" : "original payment");
  } else if (credit_only || no_refund || (s.has(R::credit) && s.has(R::only) && !s.has(R::item))) {
    const std::string_view doubt = s.has(R::span) && is_late(s) ? kHedged : std::string_view{};
    claim(s, "refund", s.has(R::exchange) ? "credit, exchange" : "credit", std::string(doubt));
  }
  // "we refund, without the delivery fee"
  const auto* outside = s.first(R::outside);
  const auto* fee = outside == nullptr ? nullptr : next_after(s, R::first_delivery, outside->end);
  if (fee != nullptr && fee->begin <= outside->end + 2 && s.has_any(R::refund, R::refund_act)) {
    claim(s, "delivery_refunded", "no", s.has(R::money) ? "The sentence names an amount too." : "");
  }
  // "We refund the price, but not the delivery fee"
  const auto* sent = s.first(R::first_delivery);
  const bool left_out = sent != nullptr && clause_around(s, *sent).has(R::negation) &&
                        !s.has_any(R::money, R::return_form) && s.has(R::refund_act);
  if (left_out) return claim(s, "delivery_refunded", "no");
  for (const auto& part : parts_of(s)) read_delivery_refund(s, part);
}

/// "The cost of delivery is not refunded."
void ReturnRules::read_delivery_refund(const Sentence& s, const Sentence& part) {
  const bool about_refund = part.has_any(R::refund, R::refund_act, R::no_return);
  const bool plain = part.has(R::delivery) && part.has(R::negation) && !part.has(R::returns) &&
                     part.has_any(R::refund, R::refund_act);
  if (!about_refund || part.has(R::return_form) || (!plain && !part.has(R::first_delivery))) return;
  const auto* fee = part.first(R::first_delivery);
  const bool excluded =
      part.has_any(R::negation, R::outside, R::no_return) || plain ||
      (fee != nullptr &&
       word_between(part, 0, fee->begin, {"minus", "less", "abzuglich", "zuzuglich", "exclude"}));
  std::string doubt = part.has(R::money) ? "The sentence names an amount too." : "";
  const bool partial =
      word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                   {"partial", "partially", "partiel", "partielle", "teilweise", "teilrucksendung",
                    "gedeeltelijk", "gedeeltelijke", "parcial"});
  if (partial) doubt = kHedged;
  claim(s, "delivery_refunded", value_text(!excluded), doubt);
}
void ReturnRules::read_rest(const Sentence& s) {
  const auto* exchange = s.first(R::exchange);
  if (exchange != nullptr && s.word(exchange->end) == ":") {
    if (const auto* next = next_after(s, R::exchange, exchange->end)) exchange = next;
  }
  if (exchange != nullptr && !s.has_any(R::item, R::day)) {
    const auto clause = clause_around(s, *exchange);
    const bool no = clause.has_any(R::negation, R::no_return, R::final_sale);
    const auto* payer = s.first(R::payer);
    const bool eased = payer != nullptr && payer->value == "shop" && !s.has(R::returns);
    const bool yes = (clause.has_any(R::can, R::free) || eased) && !s.has(R::only);
    if (no || yes) claim(s, "exchange", value_text(!no));
  }
  if (s.has(R::final_sale) &&
      !s.has_any(R::item, R::method, R::span, R::need, R::region, R::free)) {
    claim(s, "accepted", "no");
  }
  if (s.has(R::restocking)) {
    if (const auto* share = s.first(R::share))
      claim(s, "restocking_share", share_text(share->number));
    const auto* money = s.first(R::money);
    if (money != nullptr && money->money) claim(s, "restocking_fee", value_text(*money->money));
  }
}

}  // namespace rangebook
