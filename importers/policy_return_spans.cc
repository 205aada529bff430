// What a time in a sentence about returns is of: the refund, the second step, what goes wrong.
#include "importers/policy_return_spans.h"

#include <algorithm>
#include <string_view>

#include "importers/policy_rules.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr std::size_t kShortNote = 9;

/// True where a stop or a joint stands right before the time.
bool stands_apart(const Sentence& s, const PolicyMark& span) {
  const auto* within = last_before(s, R::within, span.begin);
  const auto begin = within != nullptr && within->end == span.begin ? within->begin : span.begin;
  return begin > 0 && (is_stop(s.word(begin - 1)) || is_joint(s, begin - 1));
}

}  // namespace

bool is_validity(const Sentence& s, const PolicyMark& span) {
  const auto clause = clause_around(s, span);
  const bool valid =
      word_between(clause, 0, static_cast<std::uint32_t>(clause.tokens.size()),
                   {"valid", "valable", "valables", "gultig", "geldig", "valido", "valida",
                    "validos", "expire", "expires", "redeemable", "einlosbar", "inwisselbaar"}) ||
      // "the label we email you, good for 45 days"
      (span.begin > 1 && s.word(span.begin - 2) == "good" && s.word(span.begin - 1) == "for");
  return valid && !clause.has(R::returns);
}

bool is_of_label(const Sentence& s, const PolicyMark& span) {
  for (auto at = span.begin; at > 0 && !is_stop(s.word(at - 1)); --at) {
    const auto word = s.word(at - 1);
    const bool label = word.ends_with("label") || word.ends_with("labels") ||
                       word.ends_with("etikett") || word.ends_with("etiquette") ||
                       word.ends_with("voucher") || word.ends_with("gutschein");
    if (label) return !between(s, R::returns, at, span.begin);
  }
  return false;
}

bool is_of_credit(const Sentence& s, const PolicyMark& span) {
  const auto* credit = last_before(s, R::credit, span.begin);
  return credit != nullptr && span.span.unit == DayUnit::months &&
         !between(s, R::returns, credit->end, span.begin) &&
         next_after(s, R::event, span.end) == nullptr;
}

bool gives_back(const Sentence& s) {
  const auto ours = [&](std::uint32_t at) {
    return word_between(s, at, at + 1, {"we", "wij", "wir"});
  };
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::returns && (ours(one.end) || (one.begin > 0 && ours(one.begin - 1)));
  });
}

bool is_exchange_alone(const Sentence& s) {
  const auto* swap = s.first(R::exchange);
  return is_swap_only(s) && s.word(swap->begin).starts_with("exchange") &&
         !(swap->begin == 0 && is_stop(s.word(swap->end)));
}

bool follows_something(const Sentence& s, const PolicyMark& span) {
  const bool begins =
      word_between(s, 0, 1,
                   {"once", "after", "nachdem", "sobald", "apres", "zodra", "nadat", "eenmaal"}) ||
      (word_between(s, 0, 1, {"une", "una"}) && word_between(s, 1, 2, {"fois", "vez"}));
  return begins && word_between(s, 0, span.begin, {","});
}

bool tells_of_money(const Sentence& s) {
  return !s.has_any(R::can, R::have) &&
         word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                      {"amount", "funds", "account", "betrag", "kaufbetrag", "kaufpreis", "konto",
                       "geld", "zahlungsmittel", "montant", "somme", "compte", "bedrag",
                       "aankoopbedrag", "rekening", "importe", "cuenta"});
}

bool tells_of_way(const Sentence& s) {
  // "Returns can take up to 10 days to reach us"
  const bool takes = word_between(s, 0, 6,
                                  {"take", "takes", "dauern", "dauert", "duren", "duurt", "prendre",
                                   "prend", "tardar", "tarda"});
  return (takes || !s.has_any(R::can, R::have)) &&
         word_between(
             s, 0, static_cast<std::uint32_t>(s.tokens.size()),
             {"unterwegs", "onderweg",   "transit",    "reach",     "parvenir",    "checked",
              "check",     "inspected",  "inspect",    "processed", "process",     "gepruft",
              "prufen",    "bearbeitet", "bearbeiten", "controles", "controlons",  "verifies",
              "traites",   "traitons",   "verwerkt",   "verwerken", "controleren", "gecontroleerd",
              "revisamos", "procesamos"});
}

bool is_bare(const Sentence& s) {
  return unread_words(s) == 0 && std::all_of(s.marks.begin(), s.marks.end(), [](const auto& one) {
           return one.role == R::span || one.role == R::region || one.role == R::within ||
                  one.role == R::only || one.role == R::until || one.role == R::under;
         });
}

bool waits(const Sentence& s) {
  if (s.has_any(R::returns, R::returnable, R::exchange, R::have, R::tell)) return false;
  return word_between(s, 0, 1,
                      {"give", "allow", "please",  "this",   "it",    "usually", "normally",
                       "dies", "das",   "rechnen", "rechne", "bitte", "comptez", "cela",
                       "ca",   "dit",   "reken",   "houd",   "esto",  "cuenta"}) &&
         unread_words(s) <= 1;
}

bool lasts(const Sentence& s, const PolicyMark& span) {
  const bool first = !s.marks.empty() && s.marks.front().role == R::refund;
  if (first && s.tokens.size() <= kShortNote && unread_words(s) == 0) return true;
  return first && word_between(s, s.marks.front().end, span.begin,
                               {"take", "takes", "dauert", "dauern", "duurt", "duren", "prend",
                                "prennent", "tarda", "tardan"});
}

bool is_from_sending(const Sentence& s, const PolicyMark& span) {
  const auto* back = next_after(s, R::returns, span.end);
  return back != nullptr && back->begin <= span.end + 6 &&
         word_between(s, span.end, back->begin, {"you", "sie", "du", "vous", "je", "u"}) &&
         word_between(s, back->begin, back->end,
                      {"send", "post", "mail", "ship", "bring", "stuurt", "renvoyez"});
}

bool ends_before_refund(const Sentence& s, const PolicyMark& span) {
  const auto* event = next_after(s, R::event, span.end);
  const auto* act = next_after(s, R::refund_act, span.end);
  if (act == nullptr || last_before(s, R::refund_act, span.begin) != nullptr) return false;
  if (event != nullptr && (event->begin > act->begin || event->value == "back")) event = nullptr;
  if (event == nullptr && stands_apart(s, span)) return false;
  const bool hands = word_between(
      s, 0, span.begin,
      {"take",    "bring",   "post",      "send",     "drop",     "hand",      "return",
       "get",     "pop",     "mail",      "ship",     "leave",    "give",      "bringst",
       "bringen", "bringe",  "bringt",    "schick",   "schicke",  "schicken",  "schickst",
       "sende",   "senden",  "gib",       "geben",    "gibst",    "rapportez", "renvoyez",
       "ramenez", "deposez", "retournez", "rapporte", "renvoie",  "breng",     "brengt",
       "stuur",   "stuurt",  "lever",     "trae",     "devuelve", "envia",     "lleva"});
  bool parted = false;
  for (auto at = event != nullptr ? event->end : span.end; at < act->begin; ++at) {
    parted = parted || is_joint(s, at) || is_stop(s.word(at)) || s.word(at) == "-";
  }
  return hands && parted;
}

bool leads_to_refund(const Sentence& s, const PolicyMark& span) {
  const auto* act = next_after(s, R::refund_act, span.end);
  if (act == nullptr || !stands_apart(s, span)) return false;
  for (auto at = span.end; at < act->begin; ++at) {
    if (is_joint(s, at)) return false;
  }
  return true;
}

}  // namespace rangebook
