// What marks about returns say beside each other: who pays, whose receipt, what is refused.
#include "importers/policy_refine_steps.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Marks = PolicyMarks;
using Tokens = PolicyTokens;

}  // namespace

/// "The shipping costs for the return": of the way back.
void name_return_costs(Marks& marks, const Tokens& tokens) {
  for (auto& fee : marks) {
    if (fee.role != R::first_delivery) continue;
    const bool back = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
      return one.role == R::returns && one.begin > fee.end &&
             only_words(
                 tokens, fee.end, one.begin,
                 {"for", "of", "on", "the",   "a",    "your", "any", "fur", "die", "der", "eine",
                  "de",  "du", "le", "votre", "voor", "van",  "het", "je",  "uw",  "een"});
    });
    if (back) fee.role = R::return_form;
  }
}

/// "After we have received ..", "receiving your return": the return has arrived.
void turn_receipts(Marks& marks, const Tokens& tokens) {
  for (auto& event : marks) {
    if (event.role != R::event || event.value != "delivery") continue;
    bool receipt = false;
    for (auto at = event.begin; at < event.end; ++at) {
      for (const std::string_view stem :
           {"receiv", "recei", "recu", "recep", "erhalt", "ontvang"}) {
        receipt = receipt || tokens[at].word.starts_with(stem);
      }
    }
    if (!receipt) continue;
    bool ours = false;
    auto first = event.begin < 5 ? 0 : event.begin - 5;
    for (const auto& one : marks) {
      if (one.role == R::span && one.begin < event.begin) first = std::max(first, one.end);
    }
    for (auto at = first; at < event.begin; ++at) {
      const std::string_view word = tokens[at].word;
      if (is_one_of(word, {"we", "wir", "nous", "wij", "we've", "we'll", "warehouse"})) ours = true;
      if (is_one_of(word, {"you", "sie", "du", "vous", "je", "u", "jij", "."})) ours = false;
    }
    const bool returned = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
      return one.role == R::returns && one.begin > event.end &&
             only_words(tokens, event.end, one.begin,
                        {"your",    "the",       "a",        "ihrer",    "deiner",   "der",
                         "votre",   "du",        "je",       "uw",       "des",      "les",
                         "goods",   "items",     "products", "produits", "articles", "waren",
                         "artikel", "producten", "item",     "parcel"});
    });
    if (ours || returned) event.value = "back";
  }
}

/// "We pay the money back": no way back of the goods.
void drop_inner_returns(Marks& marks) {
  const Marks all = marks;
  std::erase_if(marks, [&](const PolicyMark& inner) {
    return inner.role == R::returns &&
           std::any_of(all.begin(), all.end(), [&](const PolicyMark& one) {
             return (one.role == R::refund || one.role == R::refund_act) &&
                    one.begin < inner.begin && inner.end <= one.end;
           });
  });
}

namespace {

/// "We cannot refund your return postage"
bool is_refused(const Marks& marks, const Tokens& tokens, const PolicyMark& cost) {
  return std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
    const bool refusal = one.role == R::no_return &&
                         is_one_of(tokens[one.end - 1].word, {"refund", "reimburse", "refunded"});
    return refusal && one.end <= cost.begin && one.end + 2 >= cost.begin;
  });
}

}  // namespace

/// "Minus the shipping costs for the return": she pays.
void add_kept_costs(Marks& marks, const Tokens& tokens) {
  Marks more;
  for (const auto& cost : marks) {
    if (cost.role != R::return_form || has_role(marks, {R::payer, R::money, R::free})) continue;
    if (is_refused(marks, tokens, cost)) {
      more.push_back({.role = R::payer, .value = "customer", .begin = cost.begin, .end = cost.end});
    }
    for (auto at = cost.begin < 2 ? 0 : cost.begin - 2; at < cost.begin; ++at) {
      if (!is_one_of(tokens[at].word, {"minus", "less", "abzuglich", "moins"})) continue;
      more.push_back({.role = R::payer, .value = "customer", .begin = at, .end = at + 1});
    }
  }
  marks.insert(marks.end(), more.begin(), more.end());
}

/// "A prepaid label is in the parcel": nothing to pay, where nothing else is said of the cost.
void add_prepaid(Marks& marks, const Tokens& tokens) {
  if (has_role(marks,
               {R::money, R::free, R::payer, R::negation, R::exchange, R::faulty, R::region})) {
    return;
  }
  const bool conditional = std::any_of(tokens.begin(), tokens.end(), [](const PolicyToken& one) {
    return is_one_of(one.word, {"if", "wenn", "falls", "si", "als", "indien", "unless", "cost"});
  });
  if (conditional || (!tokens.empty() && tokens.back().word == ";")) return;
  for (std::uint32_t at = 0; at < tokens.size(); ++at) {
    const bool paid = is_one_of(
        tokens[at].word,
        {"prepaid",      "pre-paid",        "postage-paid",     "freepost",       "frankierte",
         "frankiertes",  "frankierten",     "vorfrankierte",    "vorfrankiertes", "vorfrankierten",
         "prepayee",     "preaffranchie",   "pre-affranchie",   "affranchie",     "gefrankeerd",
         "gefrankeerde", "voorgefrankeerd", "voorgefrankeerde", "prepagada",      "prefranqueada"});
    if (!paid) continue;
    for (auto near = at < 4 ? 0 : at - 4; near < at + 4 && near < tokens.size(); ++near) {
      const std::string_view word = tokens[near].word;
      const bool label = word.ends_with("label") || word.ends_with("etikett") ||
                         word.starts_with("etiquet") || word.ends_with("etiket") ||
                         word.ends_with("sticker") || word.ends_with("aufkleber");
      if (!label) continue;
      marks.push_back({.role = R::free, .value = "prepaid", .begin = at, .end = at + 1});
      return;
    }
  }
}

/// "We cover the cost of returns", "we do not cover it": who the verb speaks of.
void turn_payers(Marks& marks, const Tokens& tokens) {
  for (auto& payer : marks) {
    const bool verb = is_one_of(tokens[payer.begin].word,
                                {"cover", "pay", "meet", "bear", "foot", "shoulder", "refund"});
    if (payer.role != R::payer || payer.value != "customer" || !verb) continue;
    bool ours = false;
    bool denied = false;
    for (auto at = payer.begin < 4 ? 0 : payer.begin - 4; at < payer.begin; ++at) {
      const std::string_view word = tokens[at].word;
      if (is_one_of(word, {"we", "we'll"})) ours = true;
      if (is_one_of(word, {"you", "you'll", "customer", "customers", "buyer", "buyers", "that"})) {
        ours = false;
      }
      if (is_one_of(word, {"not", "don't", "can't", "cannot", "won't"})) denied = true;
    }
    if (ours) payer.value = "shop";
    if (ours && denied) payer.value = "customer";
    if (!ours || !denied) continue;
    std::erase_if(marks, [&](const PolicyMark& one) {
      return (one.role == R::negation || one.role == R::no_return) && one.begin < payer.begin &&
             one.begin + 4 >= payer.begin;
    });
    return;
  }
}

/// "Wir zahlen den Kaufpreis zurueck": the money goes back, nothing is said of what sending costs.
void drop_paid_back(Marks& marks, const Tokens& tokens) {
  if (has_role(marks, {R::return_form, R::first_delivery, R::label})) return;
  std::erase_if(marks, [&](const PolicyMark& payer) {
    if (payer.role != R::payer || payer.value != "shop") return false;
    bool pays = false;
    for (auto at = payer.begin; at < payer.end; ++at) {
      pays = pays || is_one_of(tokens[at].word, {"zahlen", "pay", "payons", "betalen", "pagamos"});
    }
    if (!pays) return false;
    return std::any_of(tokens.begin() + payer.end, tokens.end(), [](const PolicyToken& one) {
      return is_one_of(one.word, {"zuruck", "terug", "back"});
    });
  });
}

/// "Orders are processed within ..": nothing of money that goes back.
void turn_loose_refunds(Marks& marks) {
  if (has_role(marks, {R::refund, R::returns, R::returnable})) return;
  for (auto& one : marks) {
    if (one.role == R::refund_act && one.value == "loose") one.role = R::dispatch;
  }
}

namespace {

/// "Returning or swapping is not possible"
bool is_impossible(const Marks& marks, const Tokens& tokens, const PolicyMark& no) {
  if (no.end >= tokens.size() || has_role(marks, {R::delivery, R::kind, R::dispatch, R::payer})) {
    return false;
  }
  return is_one_of(tokens[no.end].word, {"possible", "moglich", "mogelijk", "posible"}) &&
         has_role(marks, {R::returns});
}

}  // namespace

/// "can unfortunately not take back": a negation right before the return.
void add_refusals(Marks& marks, const Tokens& tokens) {
  Marks refusals;
  for (const auto& no : marks) {
    if (no.role != R::negation) continue;
    const bool said = std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
      return one.role == R::returns && one.begin >= no.end && one.begin <= no.end + 1;
    });
    if (!said && !is_impossible(marks, tokens, no)) continue;
    PolicyMark refusal = no;
    refusal.role = R::no_return;
    refusals.push_back(refusal);
  }
  marks.insert(marks.end(), refusals.begin(), refusals.end());
}

/// "A refund, exchange or gift card": what she gets, no goods.
void turn_gift_cards(Marks& marks, const Tokens& tokens) {
  for (auto& card : marks) {
    if (card.role != R::item || card.value != "gift-cards" || card.begin < 2) continue;
    const bool listed = is_one_of(tokens[card.begin - 1].word, {"or", "oder", "ou", "of", "a"}) &&
                        std::any_of(marks.begin(), marks.end(), [&](const PolicyMark& one) {
                          const bool gives = one.role == R::refund || one.role == R::exchange;
                          return gives && one.end <= card.begin && one.end + 2 >= card.begin;
                        });
    if (listed) card.role = R::credit;
  }
}

/// "To your credit card"
void drop_credit_cards(Marks& marks, const Tokens& tokens) {
  std::erase_if(marks, [&](const PolicyMark& one) {
    return one.role == R::credit && one.end < tokens.size() &&
           is_one_of(tokens[one.end].word, {"card", "cards"});
  });
}

}  // namespace rangebook
