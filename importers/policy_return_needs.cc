// Rules for what a return has to have: labels, the receipt, a number asked for beforehand.
#include <fmt/format.h>

#include <algorithm>

#include "importers/policy_rules.h"
#include "schema/terms_names.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr std::string_view kMissed = "The sentence says what holds where it is not so.";

constexpr std::string_view kWish = "It may be a wish, not a condition.";

constexpr std::string_view kWaived = "It is not asked for; that need not be a term.";

constexpr std::string_view kNote = "A delivery note may not do as proof of purchase.";

/// A row of the table names goods ("worn items"): a condition only where they are refused.
constexpr std::string_view kWornGoods = "worn-goods";

/// A row names where labels come from, which need not be asked for.
constexpr std::string_view kPortal = "portal";

/// A row names what may or may not do as a receipt.
constexpr std::string_view kDeliveryNote = "delivery-note";

/// "Get a receipt when you post it"
bool is_of_posting(const Sentence& s, const PolicyMark& need) {
  return need.value == to_string(ReturnCondition::receipt) &&
         word_between(s, need.begin < 4 ? 0 : need.begin - 4, need.begin + 1,
                      {"get", "obtain", "ask", "request", "demandez", "verlangen", "vraag"});
}

bool refuses(const Sentence& s) {
  return s.has_any(R::no_return, R::negation, R::final_sale, R::outside);
}

/// "Keep your receipt until you have your refund"
bool is_kept_until(const Sentence& s, const PolicyMark& need) {
  const auto* until = next_after(s, R::until, need.end);
  return need.value == to_string(ReturnCondition::receipt) && until != nullptr &&
         until->begin <= need.end + 2 &&
         word_between(s, need.begin < 5 ? 0 : need.begin - 5, need.begin,
                      {"keep", "hold", "retain", "bewahren", "conservez", "bewaar"});
}

/// "If it is not returned in its original condition, ..", but not "worn goods are not accepted"
bool is_missed(const Sentence& s, const PolicyMark& need) {
  const bool condition =
      word_between(s, 0, need.begin, {"if", "wenn", "falls", "si", "als", "indien"});
  return condition && need.value == to_string(ReturnCondition::undamaged) &&
         word_between(s, need.begin < 5 ? 0 : need.begin - 5, need.begin,
                      {"not", "isn't", "aren't", "nicht", "pas", "niet"});
}

/// "Shoes must not have been worn", "Shoes may come back, but only in their box": the item is what
/// the condition is about.
bool is_of_item(const Sentence& s, const PolicyMark& need) {
  const auto* item = s.first(R::item);
  const bool all = item != nullptr &&
                   word_between(s, item->end, need.begin,
                                {"all", "everything", "alle", "alles", "tous", "toutes", "tout"});
  // "Shoes that show signs of wear are not accepted"
  const bool relative = item != nullptr && item->begin < need.begin &&
                        word_between(s, item->end, item->end + 1, {"that", "which", "qui", "die"});
  if (relative) return true;
  return item != nullptr && !all && item->begin < need.begin &&
         !s.has_any(R::no_return, R::outside, R::final_sale);
}

/// "Without a receipt you get a credit": needed only where it is refused otherwise.
bool is_lacking(const Sentence& s, const PolicyMark& need) {
  const bool without = word_between(s, need.begin < 3 ? 0 : need.begin - 3, need.begin, {"no"}) ||
                       word_between(s, need.begin < 8 ? 0 : need.begin - 8, need.begin,
                                    {"without", "ohne", "zonder"});
  const bool state = need.value == to_string(ReturnCondition::unworn) ||
                     need.value == to_string(ReturnCondition::unwashed);
  const bool refused = s.has(R::no_return) || (refuses(s) && !s.has_any(R::credit, R::exchange));
  return without && !state && !refused;
}

/// True where the words are no condition at all: "print the label", "the date shown on your
/// receipt", a heading "Worn items".
bool is_only_named(const Sentence& s, const PolicyMark& need, bool in_list) {
  const bool label = need.value == to_string(ReturnCondition::tags_on) && s.has(R::label);
  const bool shown = word_between(s, need.begin < 4 ? 0 : need.begin - 4, need.begin,
                                  {"shown", "stated", "printed", "listed", "angegeben", "indique",
                                   "indiquee", "vermeld", "indicada"});
  // "If you have lost your receipt"
  const bool lost = word_between(
      s, need.begin < 4 ? 0 : need.begin - 4, need.end + 2,
      {"lose", "lost", "misplaced", "verloren", "perdu", "kwijt", "kwijtgeraakt", "perdido"});
  const bool goods = need.value == kWornGoods && !in_list && !refuses(s);
  return label || shown || lost || goods || is_lacking(s, need);
}

/// Why the words may be no condition of a return; empty where they are.
std::string_view doubt_of_need(const Sentence& s, const PolicyMark& need) {
  const bool first = need.value == to_string(ReturnCondition::request_first);
  const auto* swap = s.first(R::exchange);
  const bool label = swap != nullptr && swap->begin == 0 && s.word(swap->end) == ":";
  if (is_swap_only(s) && ((label && first) || s.has(R::only))) return kSwap;
  if (is_kept_until(s, need) || is_of_posting(s, need)) return kWish;
  if (is_missed(s, need)) return kMissed;
  if (is_of_item(s, need)) return kSomeItems;
  // "We charge 5.00 for missing labels"
  const auto clause = clause_around(s, need);
  if (clause.has(R::money) && clause.has_any(R::deduct, R::payer, R::charged_after)) return kMissed;
  const auto* wish = last_before(s, R::soft, need.begin);
  const bool soft =
      wish != nullptr && wish->end + 5 >= need.begin && !between(s, R::need, wish->end, need.begin);
  // "Fill in the form if you like", "write the size on the form"
  const auto* later = next_after(s, R::soft, need.end);
  const bool free = later != nullptr && later->begin <= need.end + 3;
  const bool on_form =
      need.value == to_string(ReturnCondition::returns_form) && need.begin > 1 &&
      word_between(s, need.begin - 2, need.begin - 1, {"on", "sur", "auf", "op", "dans"});
  if (free || on_form || need.value == kPortal) return kWish;
  // "Print a label after you register"
  const bool printed =
      first && std::any_of(s.marks.begin(), s.marks.end(), [&](const auto& one) {
        return one.role == R::label && one.begin <= need.end + 5 && one.end + 5 >= need.begin;
      });
  const bool timed =
      first && s.has(R::span) &&
      (s.has(R::event) || word_between(s, 0, need.begin, {"once", "fois", "sobald", "zodra"}));
  if (soft || printed || timed) return kWish;
  return need.value == kDeliveryNote ? kNote : std::string_view{};
}

}  // namespace

void ReturnRules::read_needs(const Sentence& s) {
  for (const auto& mark : s.marks) {
    if (mark.role != R::need || is_only_named(s, mark, in_list_)) continue;
    std::string_view value = mark.value;
    if (value == kWornGoods) value = to_string(ReturnCondition::unworn);
    if (value == kPortal) value = to_string(ReturnCondition::request_first);
    if (value == kDeliveryNote) value = to_string(ReturnCondition::receipt);
    const bool waived = clause_around(s, mark).has(R::not_needed);
    claim(s, fmt::format("needs.{}", value), value_text(!waived),
          std::string(waived ? kWaived : doubt_of_need(s, mark)));
  }
}

}  // namespace rangebook
