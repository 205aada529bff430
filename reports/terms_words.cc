// Fee and threshold of each option; window and way back of one policy.
#include "reports/terms_words.h"

#include <algorithm>

#include "schema/terms_values.h"

namespace rangebook {
namespace {

void add_amount(Phrase& phrase, const Money& amount) {
  amount.minor == 0 ? phrase.words("free") : phrase.money(amount);
}

void add_option(Phrase& phrase, const DeliveryOption& option) {
  if (!phrase.empty()) phrase.words("; ");
  phrase.name(option.name.value_or(option.key)).words(" ");
  if (option.fee) {
    add_amount(phrase, *option.fee);
  } else {
    const bool steps = option.fee_by_value || option.fee_by_weight;
    phrase.words(steps ? "by steps" : "fee not stated");
  }
  if (!option.free_over) return;
  phrase.words(option.free_over->inclusive ? ", free from " : ", free above ");
  phrase.money(option.free_over->amount);
}

std::string_view method_words(ReturnMethod method) {
  switch (method) {
    case ReturnMethod::store:
      return "in store";
    case ReturnMethod::post:
      return "by post";
    case ReturnMethod::courier:
      return "by courier";
    case ReturnMethod::drop_off:
      return "by drop-off";
  }
  return {};
}

/// Nothing where the shop does not say.
void add_cost(Phrase& phrase, const ReturnCost& cost) {
  if (cost.fee) {
    phrase.words(" ");
    add_amount(phrase, *cost.fee);
  } else if (cost.paid_by) {
    phrase.words(*cost.paid_by == Payer::shop ? " free" : " at own postage");
  }
}

void add_methods(Phrase& phrase, const ReturnPolicy& policy) {
  for (const auto& [method, terms] : policy.methods) {
    if (!terms.offered.value_or(true)) continue;
    if (!phrase.empty()) phrase.words("; ");
    phrase.words(method_words(method));
    const bool own = terms.cost.fee || terms.cost.paid_by;
    add_cost(phrase, own ? terms.cost : policy.cost);
  }
  if (!policy.methods.empty() || !(policy.cost.fee || policy.cost.paid_by)) return;
  if (!phrase.empty()) phrase.words("; ");
  phrase.words("way back");
  add_cost(phrase, policy.cost);
}

}  // namespace

Phrase delivery_words(const Terms& terms) {
  Phrase phrase;
  for (const DeliveryOption& option : terms.delivery) add_option(phrase, option);
  return phrase;
}

Phrase returns_words(const Terms& terms) {
  Phrase phrase;
  if (terms.returns.empty()) return phrase;
  auto policy = std::find_if(terms.returns.begin(), terms.returns.end(),
                             [](const ReturnPolicy& each) { return each.region.empty(); });
  if (policy == terms.returns.end()) policy = terms.returns.begin();
  if (!policy->region.empty()) phrase.figure(policy->region).words(": ");
  if (policy->accepted && !*policy->accepted) return phrase.words("nothing is taken back");
  if (policy->window) phrase.figure(value_text(*policy->window));
  add_methods(phrase, *policy);
  return phrase;
}

}  // namespace rangebook
