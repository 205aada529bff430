// Rules for what a return gives: the form of the refund, an exchange, the first delivery.
#include <algorithm>

#include "importers/policy_rules.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr std::string_view kWhichWay = "It may be the cost of the way back.";

/// A voucher or the like; "credited to your card" is none.
bool offers_credit(const Sentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    const bool money = word_between(s, one.begin, one.end, {"credited"}) ||
                       word_between(s, one.end, one.end + 1, {"to", "on", "onto"});
    return one.role == R::credit && !money;
  });
}

}  // namespace

namespace {

/// A credit and an exchange beside each other, joined by "or"; nothing if there are none.
const PolicyMark* first_of_choice(const Sentence& s) {
  for (const auto& one : s.marks) {
    if (one.role != R::credit && one.role != R::exchange) continue;
    const R other = one.role == R::credit ? R::exchange : R::credit;
    const auto* next = next_after(s, other, one.end);
    if (next == nullptr || next->begin > one.end + 5) continue;
    if (word_between(s, one.end, next->begin, {"or", "oder", "ou", "of", "o"})) return &one;
  }
  return nullptr;
}

/// "You can choose an exchange or a credit note": what is given, where no money is.
bool is_choice_of_credit(const Sentence& s) {
  if (s.has_any(R::original, R::item, R::money, R::hedge, R::faulty, R::only, R::seal))
    return false;
  const auto* first = first_of_choice(s);
  if (first == nullptr || is_late(s)) return false;
  const bool chosen = s.has_any(R::can, R::have) || first->begin == 0 ||
                      word_between(s, 0, first->begin,
                                   {"choose", "choice", "get", "receive", "erhalten", "bekommen",
                                    "bekommst", "erhaltst", "kies", "kiest", "krijg", "krijgt",
                                    "choix", "choisir", "choisissez", "recevez", "wahlen"});
  const auto* refund = s.first(R::refund);
  const bool no_money =
      refund == nullptr || clause_around(s, *refund).has_any(R::negation, R::no_return);
  return chosen && no_money && unread_words(s) <= 3;
}

/// "Refunds are made as a voucher", "Le remboursement se fait sous forme d'avoir"
bool is_paid_as_credit(const Sentence& s) {
  const auto* credit = s.first(R::credit);
  if (credit == nullptr || s.has_any(R::original, R::negation, R::item, R::hedge)) return false;
  if (s.has_any(R::no_return, R::faulty, R::exchange) || is_late(s)) return false;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  const bool some = word_between(
      s, 0, size, {"late", "after", "outside",  "beyond",    "without", "gift",  "gifts",
                   "if",   "when",  "apres",    "sans",      "cadeau",  "si",    "ohne",
                   "wenn", "falls", "geschenk", "geschenke", "zonder",  "indien"});
  if (some) return false;
  const bool paid = credit->begin > 1 && word_between(s, credit->begin - 2, credit->begin,
                                                      {"fait", "effectue", "rembourse", "emis"});
  return paid || word_between(s, credit->begin < 4 ? 0 : credit->begin - 4, credit->begin,
                              {"as", "als", "forme", "vorm", "form", "lieu", "sous"});
}

/// A word for what sending costs, whichever way.
bool is_postage(const Sentence& s) {
  return word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()), {"postage", "porto"});
}

}  // namespace

/// "A refund to your original payment method, a store credit or an exchange"
void ReturnRules::claim_original(const Sentence& s) {
  const bool credit = offers_credit(s) && !s.has(R::only);
  const auto* given = s.first(R::credit);
  const auto* swap = s.first(R::exchange);
  const bool listed = credit && swap != nullptr && !s.has_any(R::negation, R::item) &&
                      swap->begin <= given->end + 3 && given->begin <= swap->end + 3;
  if (listed) claim(s, "exchange", "yes");
  claim(s, "refund",
        listed   ? "original payment, credit, exchange"
        : credit ? "original payment, credit"
                 : "original payment");
}

void ReturnRules::read_refund(const Sentence& s) {
  if (is_choice_of_credit(s)) return claim(s, "refund", "credit, exchange");
  if (!asked_refund_ && !s.has_any(R::refund, R::refund_act, R::returns, R::no_return) &&
      !(s.has(R::credit) && s.has(R::only))) {
    return;
  }
  const auto* original = s.first(R::original);
  // not "If you paid by bank transfer"
  const bool to_card = original != nullptr && !clause_around(s, *original).has(R::negation) &&
                       !word_between(s, original->begin < 3 ? 0 : original->begin - 3,
                                     original->begin, {"if", "when", "wenn", "si", "indien"});
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
    claim_original(s);
  } else if (credit_only || no_refund || (s.has(R::credit) && s.has(R::only) && !s.has(R::item))) {
    const bool own = s.has_any(R::returns, R::returnable, R::refund, R::no_return) ||
                     s.has_any(R::refund_act, R::event) || unread_words(s) == 0;
    const bool late = s.has(R::span) && is_late(s);
    const std::string_view doubt = late || !own ? kHedged : std::string_view{};
    claim(s, "refund", s.has(R::exchange) ? "credit, exchange" : "credit", std::string(doubt));
  }
  if (!to_card && is_paid_as_credit(s)) claim(s, "refund", "credit");
  read_given_instead(s);
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
  const bool any_way = s.has_any(R::returns, R::returnable) && (s.has(R::method) || is_postage(s));
  if (left_out) {
    return claim(s, "delivery_refunded", "no",
                 std::string(any_way ? kWhichWay : std::string_view{}));
  }
  if (is_refunded_too(s)) {
    return claim(
        s, "delivery_refunded", "yes",
        std::string(is_conditional(s) && !s.has(R::statutory) ? kHedged : std::string_view{}));
  }
  for (const auto& part : parts_of(s)) read_delivery_refund(s, part);
}

/// "We refund all you paid, including the delivery fee"
bool ReturnRules::is_refunded_too(const Sentence& s) const {
  const auto* fee = s.first(R::first_delivery);
  if (fee == nullptr || s.has_any(R::negation, R::no_return, R::money)) return false;
  // "with the exception of the supplementary costs" may follow
  if (last_before(s, R::outside, fee->begin) != nullptr) return false;
  if (s.has(R::return_form) || !(s.has_any(R::refund, R::refund_act) || asked_refund_))
    return false;
  const auto begin = fee->begin < 4 ? 0 : fee->begin - 4;
  const bool price =
      word_between(s, 0, fee->begin,
                   {"price", "goods", "kaufpreis", "preis", "prix", "article", "articles", "prijs",
                    "aankoopbedrag", "aankoopprijs", "bedrag", "betrag", "precio"});
  // "the price and the delivery fee"
  const bool joined =
      price && word_between(s, begin, fee->begin, {"and", "und", "et", "en", "sowie", "y"});
  return joined ||
         word_between(s, begin, fee->begin,
                      {"including", "includes", "inclusive", "einschliesslich", "inklusive", "samt",
                       "compris", "inclus", "inclusief", "inbegrip", "incluidos", "incluido"});
}

/// "Returns are accepted for a store credit or exchange": what is given, where no refund is named.
void ReturnRules::read_given_instead(const Sentence& s) {
  if (s.has_any(R::refund, R::item, R::only) || !s.has_any(R::returns, R::returnable)) return;
  if (s.has_any(R::negation, R::no_return, R::free) || !s.has_any(R::span, R::event)) return;
  bool swap = false;
  bool credit = false;
  bool given = false;
  for (const auto& mark : s.marks) {
    if (mark.role != R::credit && mark.role != R::exchange) continue;
    if (mark.role == R::credit && !offers_credit(s)) return;
    (mark.role == R::credit ? credit : swap) = true;
    given = given || word_between(s, mark.begin < 2 ? 0 : mark.begin - 2, mark.begin,
                                  {"for", "gegen", "contre", "tegen", "por"});
  }
  if (!given || !credit) return;
  claim(s, "refund", "credit");
  if (swap) claim(s, "exchange", "yes");
}

/// "Only if the whole order comes back"
bool ReturnRules::is_conditional(const Sentence& s) {
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  if (word_between(s, 0, size,
                   {"if", "only", "wenn", "nur", "falls", "si", "als", "indien", "alleen", "solo",
                    "totalite", "seulement", "uniquement", "wanneer", "lorsque", "sofern"})) {
    return true;
  }
  for (std::uint32_t at = 0; at < size; ++at) {
    const bool whole = word_between(s, at, at + 1,
                                    {"whole", "entire", "complete", "full", "ganze", "ganzen",
                                     "gesamte", "gesamten", "vollstandige", "entiere", "complete",
                                     "integrale", "hele", "volledige", "entero", "completo"});
    const bool order = word_between(s, at < 2 ? 0 : at - 2, at + 3,
                                    {"order", "orders", "bestellung", "bestelling", "commande",
                                     "pedido", "lieferung", "purchase"});
    if (whole && order) return true;
  }
  return false;
}

/// "The cost of delivery is not refunded."
void ReturnRules::read_delivery_refund(const Sentence& s, const Sentence& part) {
  const bool answers = asked_refund_ && !part.has_any(R::payer, R::returns, R::kind, R::money);
  // "Refunds are made to your card, less the delivery charge"
  const bool less =
      s.has_any(R::refund, R::refund_act) &&
      word_between(part, 0, 2, {"minus", "less", "abzuglich", "moins", "exclusief", "excl"});
  const bool about_refund = answers || less || part.has_any(R::refund, R::refund_act, R::no_return);
  const bool plain = part.has(R::delivery) && part.has(R::negation) && !part.has(R::returns) &&
                     part.has_any(R::refund, R::refund_act);
  if (!about_refund || part.has(R::return_form) || (!plain && !part.has(R::first_delivery))) return;
  const auto* fee = part.first(R::first_delivery);
  const bool excluded = part.has_any(R::negation, R::outside, R::no_return) || plain ||
                        (fee != nullptr && word_between(part, 0, fee->begin,
                                                        {"minus", "less", "abzuglich", "zuzuglich",
                                                         "exclude", "exclusief", "excl"}));
  std::string doubt = part.has(R::money) ? "The sentence names an amount too." : "";
  const bool partial = word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                                    {"partial", "partially", "partiel", "partielle", "teilweise",
                                     "teilrucksendung", "gedeeltelijk", "gedeeltelijke", "parcial",
                                     "part", "parts", "deel", "teil", "partie", "slechts"});
  if (partial) doubt = kHedged;
  // "Refunded if you send back the whole order"
  if (!excluded && is_conditional(s)) doubt = kHedged;
  // "Returned in store or by post; postage is not refunded": of which way?
  if (s.has_any(R::returns, R::returnable) && (s.has(R::method) || is_postage(s))) {
    doubt = kWhichWay;
  }
  claim(s, "delivery_refunded", value_text(!excluded), doubt);
}

namespace {

/// "It may be returned for an exchange or a refund": what is offered side by side.
bool is_offered(const Sentence& s, const PolicyMark& exchange) {
  if (s.has_any(R::no_return, R::faulty, R::only, R::credit)) return false;
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    if (one.role != R::refund && one.role != R::refund_act) return false;
    const auto& first = one.begin < exchange.begin ? one : exchange;
    const auto& second = one.begin < exchange.begin ? exchange : one;
    return second.begin >= first.end && second.begin <= first.end + 5 &&
           word_between(s, first.end, second.begin, {"or", "oder", "ou", "of", "o"}) &&
           !between(s, R::negation, exchange.begin < 4 ? 0 : exchange.begin - 4, exchange.begin);
  });
}

/// "Return or exchange it within 30 days"
bool is_beside_return(const Sentence& s, const PolicyMark& exchange) {
  if (s.has_any(R::no_return, R::negation, R::faulty, R::item, R::only, R::credit)) return false;
  const bool able = s.has_any(R::can, R::have) || (!s.marks.empty() && s.marks.front().begin == 0);
  return able && std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
           if (one.role != R::returns || one.begin == exchange.begin) return false;
           const auto& first = one.begin < exchange.begin ? one : exchange;
           const auto& second = one.begin < exchange.begin ? exchange : one;
           return second.begin >= first.end && second.begin <= first.end + 6 &&
                  word_between(s, first.end, second.begin, {"or", "oder", "ou", "of", "o"});
         });
}

/// "We do not exchange", "an exchange is not possible", but not "we exchange it if it was not
/// worn".
bool is_exchange_denied(const Sentence& s, const PolicyMark& exchange) {
  const auto clause = clause_around(s, exchange);
  if (clause.has_any(R::no_return, R::final_sale)) return true;
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    if (one.role != R::negation) return false;
    const bool before = one.end <= exchange.begin;
    const auto from = before ? one.end : exchange.end;
    const auto to = before ? exchange.begin : one.begin;
    for (auto at = from; at < to; ++at) {
      if (is_stop(s.word(at))) return false;
    }
    return !word_between(s, from, to,
                         {"if", "unless", "wenn", "sofern", "falls", "si", "s'", "als", "mits"});
  });
}

}  // namespace

void ReturnRules::read_exchange(const Sentence& s) {
  const auto* exchange = s.first(R::exchange);
  if (exchange != nullptr && s.word(exchange->end) == ":") {
    if (const auto* next = next_after(s, R::exchange, exchange->end)) exchange = next;
  }
  if (exchange != nullptr && !s.has_any(R::item, R::day)) {
    const auto clause = clause_around(s, *exchange);
    const bool no = is_exchange_denied(s, *exchange);
    const auto* payer = s.first(R::payer);
    const bool eased = payer != nullptr && payer->value == "shop" && !s.has(R::returns);
    // "We're happy to offer a refund, exchange or .."
    const auto* can = last_before(s, R::can, exchange->begin);
    const bool able = can != nullptr && can->end + 6 >= exchange->begin &&
                      !between(s, R::negation, can->end, exchange->begin);
    const bool yes = (clause.has_any(R::can, R::free) || eased || able ||
                      is_offered(s, *exchange) || is_beside_return(s, *exchange)) &&
                     !s.has(R::only) && !word_between(s, 0, exchange->begin, {"too", "trop"});
    // "Outlet goods are not taken back, an exchange is possible"
    const auto* refusal = s.first(R::no_return);
    const bool of_some = !no && refusal != nullptr &&
                         !s.has_any(R::refund, R::refund_act, R::credit) &&
                         unread_words(clause_around(s, *refusal)) > 0;
    if (no || yes) {
      const auto* denied = last_before(s, R::negation, exchange->begin);
      const bool of_cost = denied != nullptr && between(s, R::deduct, denied->end, exchange->begin);
      const bool taken_back = says_but(s) && !s.has(R::credit) && (!no || denied == nullptr);
      const bool doubted = of_some || of_cost || taken_back;
      claim(s, "exchange", value_text(!no), std::string(doubted ? kSomeItems : std::string_view{}));
    }
  }
}

}  // namespace rangebook
