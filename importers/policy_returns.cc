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
constexpr std::string_view kSomeItems = "The sentence speaks of certain items.";

/// The last mark of the role that ends at or before a token; nothing if there is none.
const PolicyMark* last_before(const Sentence& s, R role, std::uint32_t at) {
  const PolicyMark* last = nullptr;
  for (const auto& mark : s.marks) {
    if (mark.role == role && mark.end <= at) last = &mark;
  }
  return last;
}

const PolicyMark* next_after(const Sentence& s, R role, std::uint32_t at) {
  for (const auto& mark : s.marks) {
    if (mark.role == role && mark.begin >= at) return &mark;
  }
  return nullptr;
}

bool between(const Sentence& s, R role, std::uint32_t begin, std::uint32_t end) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == role && one.begin >= begin && one.end <= end;
  });
}

bool word_between(const Sentence& s, std::uint32_t begin, std::uint32_t end,
                  std::initializer_list<std::string_view> words) {
  for (auto at = begin; at < end && at < s.tokens.size(); ++at) {
    if (std::find(words.begin(), words.end(), s.word(at)) != words.end()) return true;
  }
  return false;
}

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

/// The words around a mark up to the next stops.
Sentence clause_around(const Sentence& s, const PolicyMark& mark) {
  std::uint32_t begin = mark.begin;
  std::uint32_t end = mark.end;
  while (begin > 0 && !is_stop(s.word(begin - 1))) --begin;
  while (end < s.tokens.size() && !is_stop(s.word(end))) ++end;
  return part_of(s, begin, end);
}

/// The places of items in the sentence, each item once.
std::vector<const PolicyMark*> items_of(const Sentence& s) {
  std::vector<const PolicyMark*> items;
  for (const auto& mark : s.marks) {
    if (mark.role != R::item) continue;
    const auto before = mark.begin > 0 ? s.word(mark.begin - 1) : std::string_view{};
    if (before == "non" || before == "nicht") continue;  // "non-sale items"
    // "engraved jewellery" speaks of the first alone
    const bool part = !items.empty() && items.back()->end == mark.begin;
    if (!part) items.push_back(&mark);
  }
  return items;
}

/// "No refund on .., but an exchange": an exchange or credit in a clause that refuses nothing.
bool offers_instead(const Sentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return (one.role == R::exchange || one.role == R::credit) &&
           !clause_around(s, one).has_any(R::negation, R::no_return);
  });
}

/// "unless the goods are faulty"
bool is_exception(const Sentence& s, const PolicyMark& faulty) {
  return word_between(s, faulty.begin < 6 ? 0 : faulty.begin - 6, faulty.begin,
                      {"unless", "except", "sauf", "ausser", "tenzij", "behalve", "denn"});
}

/// What the sentence says about one of its items; nothing if it only mentions it.
std::optional<ItemRule> rule_for(const Sentence& s, const PolicyMark& item, bool in_list) {
  const PolicyMark* refusal = last_before(s, R::no_return, item.begin);
  if (refusal == nullptr) refusal = last_before(s, R::final_sale, item.begin);
  const PolicyMark* later = next_after(s, R::no_return, item.end);
  const PolicyMark* seal = next_after(s, R::seal, item.end);
  const PolicyMark* seal_before = last_before(s, R::seal, item.begin);
  const PolicyMark* next_item = next_after(s, R::item, item.end);
  const bool other_between =
      next_item != nullptr && seal != nullptr && next_item->begin < seal->begin &&
      word_between(s, item.end, next_item->begin, {"that", "which", "die", "qui"});
  const bool refused_first = later != nullptr && seal != nullptr && later->begin < seal->begin &&
                             word_between(s, later->end, seal->begin, {",", ";", "while", "and"}) &&
                             next_item != nullptr && next_item->begin < seal->begin;
  // "swimwear without its strip": speaks of the item before it alone
  const bool of_one = seal != nullptr && next_item != nullptr && next_item->begin < seal->begin &&
                      word_between(s, seal->begin < 2 ? 0 : seal->begin - 2, seal->begin,
                                   {"without", "ohne", "sans", "zonder"});
  if (seal != nullptr && !other_between && !refused_first && !of_one) {
    return ItemRule::unopened_only;
  }
  if (seal_before != nullptr && seal_before->end == item.begin) {
    return ItemRule::unopened_only;
  }
  const bool only =
      s.has(R::only) || word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                                     {"but", "aber", "mais", "maar"});
  const bool left_out =
      next_after(s, R::outside, item.end) != nullptr && s.has(R::returns) && !s.has(R::returnable);
  const bool no_money = s.has(R::negation) && s.has_any(R::refund, R::refund_act);
  const bool instead = no_money && offers_instead(s);
  const bool refused = refusal != nullptr || later != nullptr || in_list || left_out ||
                       (no_money && !s.has(R::outside));
  if ((only || instead) && (s.has(R::exchange) || s.has(R::credit))) {
    if (s.has(R::exchange) && s.has(R::credit)) return ItemRule::exchange_or_credit;
    return s.has(R::credit) ? ItemRule::credit_only : ItemRule::exchange_only;
  }
  const PolicyMark* outside = last_before(s, R::outside, item.begin);
  if (outside != nullptr && refused) return std::nullopt;
  if (refused) return ItemRule::not_returnable;
  if (outside != nullptr && s.has(R::returns)) return ItemRule::not_returnable;
  if (s.has(R::returnable) && !s.has(R::negation)) return ItemRule::returnable;
  return std::nullopt;
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

void ReturnRules::read(const Sentence& s, bool goes_on) {
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
  if (s.has(R::statutory)) {
    for (const auto& mark : s.marks) {
      const bool window = mark.role == R::span && mark.span.max && mark.span.min == mark.span.max;
      if (!window || *mark.span.max < 7) continue;
      claim(s, "window", value_text(ReturnWindow{mark.span.max, mark.span.unit, {}}),
            std::string(kLegal));
    }
    return;
  }
  if (!read_exceptions(s)) read_rules(s);
}

void ReturnRules::read_rules(const Sentence& s) {
  const bool items = read_items(s);
  read_needs(s);
  if (read_season(s)) return;
  if (items && !s.has(R::span)) return;
  if (items) doubt_ = kSomeItems;
  read_spans(s);
  read_costs(s);
  read_refund(s);
  read_rest(s);
}

/// "All garments can be returned .., except swimwear": the rule, then what it leaves out.
bool ReturnRules::read_exceptions(const Sentence& s) {
  const auto* outside = s.first(R::outside);
  const auto* item = s.first(R::item);
  if (outside == nullptr || item == nullptr || item->begin < outside->end) return false;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  const auto rule = part_of(s, 0, outside->begin);
  const auto rest = part_of(s, outside->end, size);
  if (rule.has_any(R::no_return, R::negation) ||
      !rule.has_any(R::returns, R::returnable, R::exchange))
    return false;
  const bool listed = std::exchange(in_list_, true);
  read_items(rest);
  in_list_ = listed;
  read_rules(rule);
  return true;
}

void ReturnRules::ask(const Sentence* question) {
  asked_ = question != nullptr && question->has_any(R::returns, R::exchange);
  asked_refund_ = question != nullptr && question->has_any(R::refund, R::refund_act) &&
                  !question->has(R::returns);
}

void ReturnRules::open_list(const Sentence& s) {
  in_list_ = s.has(R::no_return) && !s.has(R::item);
}

bool ReturnRules::read_items(const Sentence& s) {
  bool any = false;
  for (const auto* item : items_of(s)) {
    any = true;
    const auto rule = rule_for(s, *item, in_list_);
    if (!rule) continue;
    claim(s, fmt::format("items.{}", item->value), value_text(*rule));
  }
  return any;
}

void ReturnRules::read_needs(const Sentence& s) {
  const bool waived = s.has(R::not_needed);
  for (const auto& mark : s.marks) {
    if (mark.role != R::need) continue;
    // "Without a receipt you get a credit": needed only where it is refused otherwise.
    const bool without = word_between(s, mark.begin < 3 ? 0 : mark.begin - 3, mark.begin,
                                      {"without", "no", "ohne", "sans", "zonder"});
    if (without && !s.has(R::no_return)) continue;
    claim(s, fmt::format("needs.{}", mark.value), value_text(!waived));
  }
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
                                    {"and", "und", "et", "en", "to", "-"});
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
  if (!s.has_any(R::season, R::event)) doubt = "It is not said what the date is about.";
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
    claim(s, "window", "no limit");
  }
}

void ReturnRules::read_span(const Sentence& s, std::size_t index, bool& window_seen) {
  const PolicyMark& span = s.marks[index];
  const auto* event = event_of(s, span);
  const auto* act = last_before(s, R::refund_act, span.begin);
  const auto* act_behind = next_after(s, R::refund_act, span.end);
  const bool ours = event != nullptr && event->value == "back";
  const bool customers = event != nullptr && !ours && event->begin < span.end + 5;
  const bool return_left = last_before(s, R::returns, span.begin) != nullptr;
  const auto* exchange = act == nullptr ? nullptr : last_before(s, R::exchange, act->begin);
  const bool exchange_or = exchange != nullptr && exchange->end + 2 >= act->begin;
  const bool act_close =
      act != nullptr && !exchange_or && !between(s, R::returns, act->end, span.begin);
  const bool act_first =
      act_behind != nullptr && !return_left && !between(s, R::returns, span.end, act_behind->begin);
  if (ours || asked_refund_ ||
      ((act_close || act_first) && !(customers && event->value == "purchase"))) {
    if (s.has_any(R::refund, R::refund_act) || asked_refund_ || ours) {
      DaySpan time = span.span;
      if (time.min == time.max && span.open) time.min.reset();
      claim(s, "refund_within", value_text(time));
    }
    return;
  }
  const bool fixed = span.span.max && (!span.span.min || span.span.min == span.span.max);
  if (!fixed) return;
  const auto* further = last_before(s, R::further, span.begin);
  const bool second = (further != nullptr && further->end + 4 >= span.begin) ||
                      (event == nullptr && next_after(s, R::tell, span.end) != nullptr &&
                       return_left && window_seen);
  if (second) {
    claim(s, "send_back_within", value_text(DaySpan{span.span.max, span.span.max, span.span.unit}));
    return;
  }
  if (s.has(R::dispatch) && event == nullptr && !s.has(R::returns)) return;
  if (s.has(R::negation) && !s.has_any(R::can, R::need) && s.has(R::no_return)) return;
  ReturnWindow window{span.span.max, span.span.unit, {}};
  if (event != nullptr) window.from = counted_from(event->value);
  const bool open =
      event == nullptr && (is_counting(s.word(span.end)) || is_counting(s.word(span.end + 1)));
  const bool about = s.has_any(R::returns, R::exchange, R::need, R::event, R::returnable) ||
                     s.has_any(R::refund, R::refund_act, R::tell, R::method) || asked_;
  std::string doubt;
  if (open) doubt = "It is not clear from when it is counted.";
  if (!about || (window.unit != DayUnit::months && *window.count < 5)) {
    doubt = "It is not clear what the time is about.";
  }
  claim(s, "window", value_text(window), doubt);
  window_seen = true;
}

void ReturnRules::read_refund(const Sentence& s) {
  if (!s.has_any(R::refund, R::refund_act, R::returns, R::no_return) &&
      !(s.has(R::credit) && s.has(R::only))) {
    return;
  }
  const bool refuses = s.has(R::negation);
  if (s.has(R::original) && !refuses && s.has_any(R::refund, R::refund_act)) {
    claim(s, "refund",
          s.has(R::credit) && !s.has(R::only) ? "original payment, credit" : "original payment");
  } else if (s.has(R::credit) && s.has(R::only) && !s.has(R::item)) {
    claim(s, "refund", s.has(R::exchange) ? "credit, exchange" : "credit");
  }
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
  claim(s, "delivery_refunded", value_text(!excluded),
        part.has(R::money) ? "The sentence names an amount too." : std::string{});
}
void ReturnRules::read_rest(const Sentence& s) {
  const auto* exchange = s.first(R::exchange);
  if (exchange != nullptr && !s.has_any(R::item, R::day)) {
    const auto clause = clause_around(s, *exchange);
    const bool no = clause.has_any(R::negation, R::no_return, R::final_sale);
    const bool yes = clause.has(R::can) && !s.has(R::only);
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

void ReturnRules::answer(const Sentence& q, bool yes, const Sentence& a) {
  if (q.has_any(R::span, R::day, R::hedge, R::statutory, R::faulty)) return;
  set_region(q);
  doubt_.clear();
  Sentence both = q;
  both.text += " " + a.text;
  if (q.has(R::item)) {
    const auto items = items_of(q);
    if (a.has_any(R::only, R::exchange, R::credit, R::seal)) return;
    for (const auto* item : items) {
      claim(both, fmt::format("items.{}", item->value),
            value_text(yes ? ItemRule::returnable : ItemRule::not_returnable));
    }
    return;
  }
  const auto* payer = q.first(R::payer);
  if (q.has(R::returns) && (q.has(R::free) || (payer != nullptr && payer->value == "customer"))) {
    const bool free = q.has(R::free) == yes;
    if (free) {
      claim_free(both, "", {});
    } else if (!a.has(R::money)) {
      claim(both, "paid_by", "customer");
    }
    return;
  }
  const auto* method = q.first(R::method);
  if (method != nullptr && q.has(R::returns)) return claim(both, method->value, value_text(yes));
  if (q.has(R::exchange)) claim(both, "exchange", value_text(yes));
}

}  // namespace rangebook
