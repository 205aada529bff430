// What an amount of a sentence about delivery is: an order value, a fee, or neither.
#include <algorithm>

#include "importers/policy_amounts.h"
#include "importers/policy_clause.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

/// "10.00 off": no fee.
bool is_reduction(const Sentence& part, std::uint32_t at) {
  return word_between(part, at, at + 2,
                      {"off", "discount", "rabatt", "nachlass", "remise", "reduction", "korting",
                       "descuento", "gutschein", "voucher"});
}

/// "A voucher of 5.00 is yours from 50.00"
bool is_voucher(const Sentence& part, std::uint32_t at) {
  return word_between(
      part, at < 3 ? 0 : at - 3, at,
      {"bon", "voucher", "gutschein", "tegoedbon", "kortingsbon", "vale", "cheque"});
}

/// "For an order of 60.00 you pay the postage": no fee.
bool is_order_value(const Sentence& part, const PolicyMark* order, const PolicyMark& amount) {
  return order != nullptr && order->end + 1 == amount.begin &&
         word_between(part, order->end, amount.begin, {"of", "von", "uber", "van", "de", "worth"});
}

}  // namespace

/// What the amounts of a clause have in common.
struct DeliveryRules::Amounts {
  std::vector<const PolicyMark*> marks = {};
  bool orders = false;       ///< the clause speaks of order values
  bool of_sentence = false;  ///< the sentence does
  std::ptrdiff_t all = 0;    ///< in the sentence

  /// "30 to 59.99", and its number is i and i + 1
  bool joins(const Sentence& part, std::size_t i) const {
    const auto& mark = *marks[i];
    return close_before(part, R::over, mark.begin, 3) == nullptr &&
           close_before(part, R::under, mark.begin, 3) == nullptr && i + 1 < marks.size() &&
           marks[i + 1]->begin <= mark.end + 2 && is_range_word(part.word(mark.end)) &&
           *mark.money < *marks[i + 1]->money;
  }
};

/// One amount: a limit ("over 50") or a fee.
void DeliveryRules::weigh_amount(const Sentence& s, Clause& clause, const Amounts& amounts,
                                 std::size_t index) {
  using Bound = Clause::Bound;
  const Sentence& part = clause.part;
  const auto& mark = *amounts.marks[index];
  const auto* over = close_before(part, R::over, mark.begin, 3);
  const auto* under = close_before(part, R::under, mark.begin, 3);
  const bool more = close_after(part, R::or_more, mark.end) || part.word(mark.end) == "+";
  const auto* from = close_before(part, R::from, mark.begin, 3);
  const auto* order = close_before(part, R::order, mark.begin, 2);
  const auto* any = close_before(part, R::all_orders, mark.begin, 2);
  const bool several = amounts.marks.size() > 1;
  // "under 50 of order value we charge 4.90": of the amount before
  const bool taken =
      order != nullptr && index > 0 && amounts.marks[index - 1]->end + 1 >= order->begin;
  const bool order_before = order != nullptr && !taken;
  const bool bounded = clause.free || amounts.orders || several || amounts.of_sentence;
  const bool at_least =
      more || (over == nullptr && under == nullptr &&
               ((from != nullptr && bounded) || (order_before && (clause.free || several))));
  const bool below = under != nullptr && over == nullptr &&
                     (amounts.orders || s.has(R::order) || clause.free || amounts.all > 1);
  if (at_least) {
    clause.limits.push_back({*mark.money, Bound::from, mark.begin});
  } else if (over != nullptr) {
    clause.limits.push_back({*mark.money, Bound::over, mark.begin});
  } else if (below) {
    clause.limits.push_back({*mark.money, Bound::under, mark.begin, false, under->value == "incl"});
  } else if (!is_order_value(part, order == nullptr ? any : order, mark)) {
    const bool starts = (from != nullptr && from->end + 1 >= mark.begin) || under != nullptr;
    clause.fees.push_back({*mark.money, mark.begin, starts});
  }
}

/// Tells limits ("over 50") from fees.
void DeliveryRules::weigh_money(const Sentence& s, Clause& clause) const {
  const Sentence& part = clause.part;
  Amounts amounts;
  for (const auto& mark : part.marks) {
    if (mark.role == R::money && mark.money) amounts.marks.push_back(&mark);
  }
  const auto* payer = part.first(R::payer);
  clause.free =
      (part.has(R::free) || (payer != nullptr && payer->value == "shop")) && !part.has(R::negation);
  amounts.orders = part.has_any(R::order, R::smaller, R::all_orders) || headed_free_;
  amounts.of_sentence = !part.has_any(R::delivery, R::kind, R::first_delivery) &&
                        s.has_any(R::free, R::order) && !s.has(R::negation);
  amounts.all = static_cast<std::ptrdiff_t>(amount_count(s));
  for (std::size_t i = 0; i < amounts.marks.size(); ++i) {
    const auto& mark = *amounts.marks[i];
    if (is_voucher(part, mark.begin) || is_missing(part, mark)) {
      clause.free = false;
      return;
    }
    if (is_reduction(part, mark.end)) continue;
    const bool by_value = amounts.orders || amounts.all > 2 || part.has(R::between) ||
                          (clause.limits.empty() && s.has(R::order));
    if (by_value && amounts.joins(part, i)) {
      clause.limits.push_back({*mark.money, Clause::Bound::from, mark.begin, true});
      ++i;
      continue;
    }
    weigh_amount(s, clause, amounts, i);
  }
}

}  // namespace rangebook
