// Rules for returns: what a sentence is about, refunds, exchanges. Times, costs and items stand in
// files of their own.
#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "importers/policy_rules.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr std::string_view kLegal =
    "The sentence speaks of the legal right, not of the shop's own.";
constexpr std::string_view kAside = "The sentence may be about something else.";

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

/// "unless the goods are faulty"
bool is_exception(const Sentence& s, const PolicyMark& faulty) {
  return word_between(
      s, faulty.begin < 6 ? 0 : faulty.begin - 6, faulty.begin,
      {"unless", "except", "sauf", "ausser", "tenzij", "behalve", "denn", "hors", "salvo", "save"});
}

}  // namespace

void ReturnRules::claim(const Sentence& s, std::string_view name, std::string text,
                        std::string doubt) {
  if (doubt.empty()) doubt = doubt_;
  for (const auto& other : beside_) {
    claims_.add({other + std::string(name), text, s.text, s.byte, doubt, weak_});
  }
  claims_.add(
      {prefix_ + std::string(name), std::move(text), s.text, s.byte, std::move(doubt), weak_});
}

namespace {

/// "return.IE." for Ireland.
std::string prefix_of(std::string_view region) {
  std::string key(region);
  std::transform(key.begin(), key.end(), key.begin(),
                 [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; });
  return "return." + key + ".";
}

}  // namespace

void ReturnRules::set_region(const Sentence& s) {
  prefix_ = "return.";
  beside_.clear();
  const auto* region = s.first(R::region);
  if (region == nullptr || is_home(region->value, frame_)) return;
  prefix_ = prefix_of(s.has(R::outside) ? "world" : region->value);
  if (s.has(R::outside)) return;
  // "From Belgium and Spain you pay for returns"
  for (const auto* next = next_after(s, R::region, region->end);
       next != nullptr && next->begin <= region->end + 3 && !is_home(next->value, frame_);
       next = next_after(s, R::region, region->end)) {
    const bool listed =
        word_between(s, region->end, next->begin,
                     {"and", "und", "et", "en", "y", ",", "or", "oder", "ou", "of"});
    const auto prefix = prefix_of(next->value);
    if (!listed) return;
    if (prefix != prefix_) beside_.push_back(prefix);
    region = next;
  }
}

void ReturnRules::read_row(const Sentence& s, const Sentence& header) {
  in_row_ = true;
  asked_refund_ = header.has_any(R::refund, R::refund_act);
  read(s);
  in_row_ = false;
  asked_refund_ = false;
}

namespace {

/// "From here returns are free; customers abroad pay for them": where the places part, the end
/// where they do not.
std::uint32_t place_border(const Sentence& s, const PolicyFrame& frame) {
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  for (std::uint32_t at = 0; at < size; ++at) {
    // "28 days after delivery, or 40 days if you live in Ireland"
    if (s.word(at) != "," && s.word(at) != ";" && !is_joint(s, at)) continue;
    const auto front = part_of(s, 0, at);
    const auto rear = part_of(s, at, size);
    // "With our label returns are free; only from Switzerland you pay the postage"
    const bool abroad = front.has_any(R::money, R::free, R::payer) &&
                        front.has_any(R::returns, R::return_form) && !front.has(R::region) &&
                        rear.has_any(R::money, R::free, R::payer) && rear.has(R::region) &&
                        rear.first(R::region)->begin <= 7 && !rear.has(R::outside) &&
                        !is_home(rear.first(R::region)->value, frame) &&
                        word_between(rear, 0, rear.first(R::region)->begin,
                                     {"from", "aus", "depuis", "uit", "vanuit", "desde", "for"});
    if (abroad) return at;
    // "Returns from Ireland cost 5.00, from the UK they are free"
    const bool priced = front.has_any(R::money, R::free, R::payer) &&
                        rear.has_any(R::money, R::free, R::payer) && front.has(R::region) &&
                        rear.has(R::region) &&
                        is_home(front.first(R::region)->value, frame) !=
                            is_home(rear.first(R::region)->value, frame);
    if (priced) return at;
    if (front.has(R::span) && rear.has(R::span)) {
      const auto* away = next_after(s, R::region, at);
      const auto* home = last_before(s, R::region, at);
      const bool split = away != nullptr && !is_home(away->value, frame) &&
                         (home == nullptr || is_home(home->value, frame));
      if (split) return at;
    }
    if (s.word(at) != ";") continue;
    const auto* before = last_before(s, R::region, at);
    const auto* after = next_after(s, R::region, at);
    const bool part = before != nullptr && after != nullptr &&
                      is_home(before->value, frame) != is_home(after->value, frame);
    if (part) return at;
  }
  return size;
}

}  // namespace

namespace {

/// "28 days (14 days for outlet items)": where the remark begins and ends that has a time of its
/// own for some; nothing if there is none.
std::optional<std::pair<std::uint32_t, std::uint32_t>> time_for_some(const Sentence& s) {
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  std::uint32_t begin = 0;
  while (begin < size && s.word(begin) != "(") ++begin;
  std::uint32_t end = begin;
  while (end < size && s.word(end) != ")") ++end;
  if (begin == 0 || end == size) return std::nullopt;
  const auto inner = part_of(s, begin, end);
  const bool some = inner.has(R::span) && inner.has_any(R::item, R::hedge, R::season, R::kind);
  const bool rule = part_of(s, 0, begin).has(R::span);
  return some && rule ? std::optional(std::pair(begin, end)) : std::nullopt;
}

/// The sentence without its tokens [begin, end).
Sentence without(const Sentence& s, std::uint32_t begin, std::uint32_t end) {
  Sentence rest = part_of(s, 0, begin);
  const auto after = part_of(s, end, static_cast<std::uint32_t>(s.tokens.size()));
  rest.tokens.insert(rest.tokens.end(), after.tokens.begin(), after.tokens.end());
  for (PolicyMark mark : after.marks) {
    mark.begin += begin;
    mark.end += begin;
    rest.marks.push_back(mark);
  }
  return rest;
}

}  // namespace

void ReturnRules::read(const Sentence& s, bool goes_on) {
  if (!goes_on && ++title_age_ > 1) title_.reset();
  std::vector<Sentence> remarks;
  Sentence rest = s;
  while (const auto remark = time_for_some(rest)) {
    remarks.push_back(part_of(rest, remark->first, remark->second));
    rest = without(rest, remark->first, remark->second + 1);
  }
  read_places(rest, goes_on);
  for (auto remark = remarks.rbegin(); remark != remarks.rend(); ++remark) {
    read_places(*remark, true);
  }
}

void ReturnRules::read_places(const Sentence& s, bool goes_on) {
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  const auto border = place_border(s, frame_);
  if (border == size) return read_part(s, goes_on);
  read_part(part_of(s, 0, border), goes_on);
  carries_ = s.has_any(R::returns, R::return_form);
  read_part(part_of(s, border + 1, size), true);
  carries_ = false;
}

void ReturnRules::read_part(const Sentence& s, bool goes_on) {
  if (!goes_on) {
    methods_.clear();
    from_.reset();
  }
  goes_on_ = goes_on;
  after_refund_ = goes_on && refunded_;
  refunded_ = s.has_any(R::refund, R::refund_act);
  if (s.has(R::example)) return;
  const auto* faulty = s.first(R::faulty);
  if (faulty != nullptr && !s.has_any(R::unless_faulty, R::no_return, R::need) &&
      !is_exception(s, *faulty)) {
    return;
  }
  set_region(s);
  doubt_.clear();
  if (s.has(R::hedge) || asked_some_) doubt_ = kHedged;
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
  // "The law gives you 14 days; with us you have 60 days from delivery"
  const auto* law = s.first(R::span);
  const auto* own = law == nullptr ? nullptr : next_after(s, R::span, law->end);
  const bool ours = own != nullptr && next_after(s, R::statutory, law->end) == nullptr &&
                    word_between(s, law->end, own->begin,
                                 {"us", "we", "our", "uns", "wir", "nous", "notre", "ons", "wij",
                                  "onze", "nosotros"});
  if (ours && own->begin > law->end) {
    return read_rules(part_of(s, law->end, static_cast<std::uint32_t>(s.tokens.size())));
  }
  if (exceeds_law(s)) return read_rules(s);
  // what the law says of money, the shop does
  if (is_refunded_too(s)) read_refund(s);
  read_legal_refund(s);
  for (const auto& mark : s.marks) {
    const bool window = mark.role == R::span && mark.span.max && mark.span.min == mark.span.max;
    if (read_send_back(s, mark, false)) continue;
    if (!window || *mark.span.max < 7) continue;
    claim(s, "window", value_text(ReturnWindow{mark.span.max, mark.span.unit, {}}),
          std::string(kLegal));
  }
}

bool only_includes(const Sentence& s) {
  if (s.has_any(R::negation, R::no_return, R::only, R::final_sale)) return false;
  return std::all_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    if (one.role != R::item) return true;
    return word_between(
               s, one.begin < 4 ? 0 : one.begin - 4, one.begin,
               {"including", "inklusive", "auch", "sogar", "also", "even", "meme", "compris",
                "egalement", "ook", "inclusief", "incluso", "tambien", "incluidos"}) ||
           word_between(s, one.end, one.end + 3,
                        {"included", "too", "inklusive", "inbegriffen", "compris", "comprises",
                         "inclus", "incluses", "inbegrepen", "incluidos", "incluidas"});
  });
}

void ReturnRules::read_rules(const Sentence& s) {
  const bool items = read_items(s);
  read_needs(s);
  if (read_season(s)) return read_beside_season(s);
  if (items && !s.has(R::span)) return;
  if (items && !only_includes(s)) doubt_ = kSomeItems;
  read_spans(s);
  read_costs(s);
  read_refund(s);
  read_rest(s);
}

void ReturnRules::ask(const Sentence* question) {
  asked_ = question != nullptr && question->has_any(R::returns, R::exchange);
  asked_cost_ = question != nullptr && question->has(R::returns) && question->has(R::deduct);
  // "When do I get my money back?"
  const auto back = [&](const PolicyMark& one) {
    const bool bare = word_between(*question, one.begin, one.end, {"zuruck", "terug", "back"});
    return one.role == R::returns && !(bare && one.end == one.begin + 1);
  };
  // "Bought in one of our shops? Then .."
  // "No receipt any more? Then .."
  const bool lacking =
      question != nullptr && question->has(R::need) &&
      (question->has(R::negation) ||
       word_between(*question, 0, static_cast<std::uint32_t>(question->tokens.size()),
                    {"lost", "lose", "verloren", "perdu", "kwijt"}));
  asked_some_ = lacking || (question != nullptr && question->has(R::hedge));
  asked_refund_ = question != nullptr && question->has_any(R::refund, R::refund_act) &&
                  std::none_of(question->marks.begin(), question->marks.end(), back);
}

void ReturnRules::read_rest(const Sentence& s) {
  read_exchange(s);
  if (s.has(R::final_sale) &&
      !s.has_any(R::item, R::method, R::span, R::need, R::region, R::free)) {
    const bool some = unread_words(part_of(s, 0, s.first(R::final_sale)->begin)) > 1;
    claim(s, "accepted", "no", std::string(some ? kSomeItems : std::string_view{}));
  }
  if (s.has(R::restocking)) {
    if (const auto* share = s.first(R::share))
      claim(s, "restocking_share", share_text(share->number));
    const auto* money = s.first(R::money);
    if (money != nullptr && money->money) claim(s, "restocking_fee", value_text(*money->money));
  }
}

}  // namespace rangebook
