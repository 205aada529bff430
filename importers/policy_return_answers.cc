// Answers to questions about returns: "Who pays? We do.", "Can I return sale items? No."
#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "importers/policy_rules.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

}  // namespace

void ReturnRules::answer_freely(const Sentence& q, const Sentence& a) {
  if (q.has(R::who_pays) && q.has_any(R::returns, R::return_form)) return answer_payer(q, a);
  const bool refuses = a.has_any(R::negation, R::no_return, R::final_sale);
  const bool about = a.has_any(R::returns, R::returnable, R::no_return);
  if (!q.has(R::item) || a.has(R::item) || !about) return;
  if (a.has_any(R::only, R::exchange, R::credit, R::seal, R::span)) return;
  if (refuses || a.has_any(R::can, R::returnable)) answer(q, !refuses, a);
}

/// "Who pays for returns? We do."
void ReturnRules::answer_payer(const Sentence& q, const Sentence& a) {
  static constexpr std::string_view kUs[] = {"we", "us", "wir", "nous", "wij", "nosotros"};
  static constexpr std::string_view kThem[] = {"you", "du", "sie", "vous",
                                               "jij", "u",  "tu",  "usted"};
  auto at = 0U;
  while (at < 2 && word_between(a, at, at + 1, {"c'", "est", "it's", "that's", "das", "dat", "is"}))
    ++at;
  const auto first = a.word(at);
  set_region(q);
  doubt_.clear();
  Sentence both = q;
  both.text += " " + a.text;
  if (std::find(std::begin(kUs), std::end(kUs), first) != std::end(kUs)) {
    claim_free(both, "", {});
  } else if (std::find(std::begin(kThem), std::end(kThem), first) != std::end(kThem)) {
    claim(both, "paid_by", value_text(Payer::customer));
  }
}

/// "Can I exchange a sale item? Yes, but it is not refunded."
void ReturnRules::answer_swap(const Sentence& both, const std::vector<const PolicyMark*>& items,
                              const Sentence& a) {
  const bool only = both.has(R::exchange) && a.has(R::negation) &&
                    a.has_any(R::refund, R::refund_act, R::no_return);
  for (const auto* item : items) {
    claim(both, fmt::format("items.{}", item->value), value_text(ItemRule::exchange_only),
          std::string(only ? std::string_view{} : kNarrowed));
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
    const bool swap = q.has(R::exchange) || (yes && a.has_any(R::negation, R::no_return));
    if (yes && swap) return answer_swap(both, items, a);
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
