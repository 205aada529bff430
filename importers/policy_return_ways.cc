// Words and signs by which a sentence hands a parcel over, names a label or takes a cost back.
#include "importers/policy_return_ways.h"

#include <algorithm>
#include <string_view>

#include "importers/policy_rules.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

/// "Parcel locker", "from your door", of a way back as well.
bool names_delivery(const Sentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return (one.role == R::kind || one.role == R::delivery) &&
           std::none_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& way) {
             return way.role == R::method && way.begin < one.end && one.begin < way.end;
           });
  });
}

/// "Take", "deposez-le": the goods are handed over.
bool is_handing(std::string_view word) {
  static constexpr std::string_view kVerbs[] = {
      "take",      "bring",    "drop",     "hand",    "leave", "gib",     "geben",  "gibst",
      "bringst",   "bringen",  "bringt",   "breng",   "lever", "deposez", "depose", "remets",
      "rapportez", "remettez", "rapporte", "confiez", "lleva", "entrega", "deja"};
  word = word.substr(0, word.find('-'));
  return std::find(std::begin(kVerbs), std::end(kVerbs), word) != std::end(kVerbs);
}

}  // namespace

bool is_for_credit(const Sentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return (one.role == R::credit || one.role == R::exchange) && one.begin > 0 &&
           word_between(s, one.begin - 1, one.begin, {"for", "gegen", "contre", "tegen"}) &&
           !s.has_any(R::span, R::refund, R::refund_act);
  });
}

bool hands_over(const Sentence& s) {
  if (s.has_any(R::dispatch, R::first_delivery) || names_delivery(s)) return false;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  for (std::uint32_t at = 0; at < size; ++at) {
    const bool opens = at < 4 || is_stop(s.word(at - 1)) || is_joint(s, at - 1);
    if (!opens || !is_handing(s.word(at))) continue;
    auto end = at;
    while (end < size && !is_stop(s.word(end))) ++end;
    const auto clause = part_of(s, at, end);
    // "Bringen Sie Ihren Ausweis mit"
    const auto last = s.word(end - 1);
    if (last == "mit" || last == "mee") continue;
    if (unread_words(clause) <= 1 && !clause.has_any(R::need, R::tell)) return true;
  }
  return false;
}

bool is_labelled(const Sentence& s) {
  const auto* way = s.first(R::method);
  return way != nullptr && way->begin == 0 &&
         (s.word(way->end) == ":" || s.word(way->end - 1) == ":");
}

bool begins_free(const Sentence& s) {
  const auto* free = s.first(R::free);
  return free != nullptr && free->begin <= 2 && word_between(s, free->end, free->end + 1, {","}) &&
         (!s.has(R::returns) || s.has(R::refund_act)) &&
         !s.has_any(R::delivery, R::kind, R::return_form, R::method, R::money);
}

bool means_both(const Sentence& s) {
  return word_between(s, 0, 6,
                      {"both", "either", "beides", "beide", "les", "tous", "toutes", "allebei",
                       "ambas", "ambos", "neither", "each", "all", "alle", "todos", "todas"});
}

bool is_short_free(const Sentence& s, bool after_way) {
  return after_way && s.has(R::free) && s.tokens.size() <= 8 &&
         !s.has_any(R::delivery, R::kind, R::returns, R::return_form) &&
         unread_words(s) <= (means_both(s) ? 1U : 0U);
}

bool names_free_label(const Sentence& s) {
  const auto* free = s.first(R::free);
  // "The care label is free of chemicals", "a free gift label"
  const bool other = free == nullptr ||
                     word_between(s, free->end, free->end + 1, {"of", "from", "von", "van"}) ||
                     word_between(s, 0, 99,
                                  {"care", "gift", "size", "brand", "wash", "washing", "address",
                                   "pflegeetikett", "waschetikett", "wasetiket", "composition",
                                   "lavage", "cadeau", "geschenk", "prenda"});
  return !other && !s.has_any(R::need, R::delivery, R::kind) &&
         std::any_of(s.tokens.begin(), s.tokens.end(), [](const PolicyToken& one) {
           return one.word.ends_with("label") || one.word.ends_with("etikett") ||
                  one.word.starts_with("etiquet");
         });
}

bool deducts(const Sentence& s) {
  constexpr std::size_t kShort = 14;
  return s.has(R::money) && s.has_any(R::charged_after, R::deduct) && s.tokens.size() <= kShort &&
         !s.has_any(R::delivery, R::kind, R::order, R::over, R::first_delivery, R::per_item) &&
         unread_words(s) <= 1;
}

bool gives_more(const Sentence& s) {
  const auto* under = s.first(R::under);
  return (under != nullptr && under->value == "incl") ||
         word_between(s, 0, 99,
                      {"add", "adds", "added", "contribute", "towards", "extra", "zusatzlich",
                       "dazu", "ajoutons", "participons", "bij", "anadimos"});
}

bool has_other_way(const Sentence& s) {
  const auto* way = s.first(R::method);
  if (way == nullptr || is_labelled(s)) return false;
  for (auto at = way->end; at < s.tokens.size(); ++at) {
    if (!word_between(s, at, at + 1, {"or", "oder", "ou", "of", "o"})) continue;
    const auto rest = part_of(s, at, static_cast<std::uint32_t>(s.tokens.size()));
    if (unread_words(rest) > 0 && !rest.has_any(R::method, R::money, R::free, R::label))
      return true;
  }
  return false;
}

bool is_postage(const Sentence& s) {
  return word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()), {"postage", "porto"});
}

bool is_of_exchange(const Sentence& s) {
  const auto* exchange = s.first(R::exchange);
  // "Swapping it for another size is free"
  const bool size = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::exchange && one.end > one.begin + 1 &&
           word_between(s, one.begin, one.end,
                        {"size", "colour", "grosse", "taille", "couleur", "maat", "kleur"});
  });
  if (size && !s.has_any(R::return_form, R::method, R::refund, R::refund_act)) return true;
  // "Omruilen is gratis": Dutch has other words for returns
  const std::string_view word = exchange == nullptr ? std::string_view{} : s.word(exchange->begin);
  const bool dutch =
      word.starts_with("ruil") || word.starts_with("omruil") || word.starts_with("omwissel");
  if (dutch && is_swap_only(s)) return true;
  return exchange != nullptr && !s.has_any(R::returns, R::return_form, R::method) &&
         std::none_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
           return one.role == R::payer && one.end <= exchange->begin;
         });
}

bool is_either(const Sentence& before, const Sentence& part) {
  const auto size = static_cast<std::uint32_t>(before.tokens.size());
  const auto* way = last_before(before, R::method, size);
  return way != nullptr && way->end == size && part.has(R::method) &&
         part.first(R::method)->begin <= 1;
}

}  // namespace rangebook
