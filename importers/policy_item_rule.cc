// One rule after the other: a seal, something given instead of money, a refusal, a permission.
#include "importers/policy_item_rule.h"

#include <algorithm>

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

/// "No refund on .., but an exchange": an exchange or credit in a clause that refuses nothing.
bool offers_instead(const Sentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return (one.role == R::exchange || one.role == R::credit) &&
           !clause_around(s, one).has_any(R::negation, R::no_return);
  });
}

/// "Hats, and goods which have been opened": of the goods.
bool is_of_others(const Sentence& s, const PolicyMark& item, const PolicyMark& seal) {
  for (auto at = item.end; at + 1 < seal.begin; ++at) {
    const bool goods =
        is_joint(s, at) && !between(s, R::item, at, seal.begin) &&
        word_between(s, at + 1, at + 4,
                     {"products", "items", "articles", "goods", "artikel", "waren", "produkte",
                      "produits", "artikelen", "producten", "productos", "articulos"});
    if (goods) return true;
  }
  return false;
}

/// Whether the seal named behind the item is of this item.
bool is_of_seal(const Sentence& s, const PolicyMark& item, const PolicyMark& seal) {
  // "pierced earrings, or swimwear where the seal has been removed"
  for (auto at = item.end; item.value == "pierced-jewellery" && at + 1 < seal.begin; ++at) {
    if (s.word(at) == "," && is_joint(s, at + 1)) return false;
  }
  const auto* next = next_after(s, R::item, item.end);
  const bool more = next != nullptr && next->begin < seal.begin;
  if (more && word_between(s, item.end, next->begin, {"that", "which", "die", "qui"})) return false;
  // "Tights cannot be returned, and swimwear only with its strip"
  const PolicyMark* later = next_after(s, R::no_return, item.end);
  if (later == nullptr) later = next_after(s, R::final_sale, item.end);
  const bool refused_first = more && later != nullptr && later->begin < seal.begin &&
                             word_between(s, later->end, seal.begin, {",", ";", "while", "and"});
  if (refused_first) return false;
  // "swimwear without its strip": speaks of the item before it alone
  const bool joined = more && next->begin == item.end + 1 && is_joint(s, item.end);
  const bool of_one = more && !joined &&
                      word_between(s, seal.begin < 3 ? 0 : seal.begin - 3, seal.begin,
                                   {"without", "ohne", "sans", "zonder", "sin", "waarvan", "dont",
                                    "deren", "dessen", "whose"});
  // "underwear, swimwear with the strip removed": of the one before "with"
  const auto* last = last_before(s, R::item, seal.begin);
  const bool of_last =
      last != nullptr && last->begin > item.begin &&
      word_between(s, last->end, last->end + 1, {"with", "mit", "avec", "met", "con"});
  // "underwear, cosmetics (unless sealed)"
  const bool in_brackets = last != nullptr && last->begin > item.begin && s.word(last->end) == "(";
  // "tights, opened cosmetics": of the item behind it
  const bool of_next = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::item && one.begin == seal.end;
  });
  return !of_one && (!of_last || joined) && !in_brackets && !of_next &&
         !is_of_others(s, item, seal);
}

std::ptrdiff_t exchange_marks(const Sentence& s) {
  return std::count_if(s.marks.begin(), s.marks.end(),
                       [](const PolicyMark& one) { return one.role == R::exchange; });
}

/// "May be exchanged but not credited"
bool is_denied(const Sentence& s, const PolicyMark& given) {
  const auto* no = last_before(s, R::negation, given.begin);
  return no != nullptr && no->end + 1 >= given.begin;
}

/// Where and how the sentence refuses goods.
struct Refusal {
  const PolicyMark* before = nullptr;
  const PolicyMark* behind = nullptr;
  bool around = false;  ///< "we take no underwear back"
};

Refusal refusal_of(const Sentence& s, const PolicyMark& item) {
  Refusal refusal;
  refusal.before = last_before(s, R::no_return, item.begin);
  if (refusal.before == nullptr) refusal.before = last_before(s, R::final_sale, item.begin);
  refusal.behind = next_after(s, R::no_return, item.end);
  if (refusal.behind == nullptr) refusal.behind = next_after(s, R::final_sale, item.end);
  refusal.around = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::no_return && one.begin < item.begin && one.end > item.end;
  });
  return refusal;
}

/// "Our swimwear comes with a hygiene strip": nothing is said of returns.
bool is_described(const Sentence& s, const PolicyMark& item, const PolicyMark& seal) {
  const bool judged = s.has_any(R::no_return, R::final_sale, R::only, R::negation, R::outside) ||
                      s.has_any(R::returns, R::returnable, R::exchange, R::refund, R::need);
  return !judged &&
         !word_between(s, item.end, seal.begin,
                       {"must", "should", "muss", "mussen", "doit", "doivent", "moet", "moeten"}) &&
         word_between(
             s, item.end, seal.begin,
             {"comes", "come", "supplied", "fitted", "has", "have", "kommt", "hat", "haben",
              "geliefert", "livre", "livres", "heeft", "hebben", "tiene", "tienen"});
}

/// "Tights only unopened", "swimwear with its strip"
bool needs_seal(const Sentence& s, const PolicyMark& item, const Refusal& refusal, bool in_list) {
  const PolicyMark* behind = next_after(s, R::seal, item.end);
  const bool named = behind != nullptr && is_sealable(item) && is_of_seal(s, item, *behind);
  if (named && (in_list || refusal.around || !is_described(s, item, *behind))) return true;
  const PolicyMark* before = last_before(s, R::seal, item.begin);
  if (before == nullptr) return false;
  // "Do not send back with a broken seal: .."
  const bool first = !between(s, R::item, 0, before->begin);
  const bool headed =
      refusal.before != nullptr && first && word_between(s, before->end, item.begin, {":"});
  if (headed || before->end == item.begin) return true;
  // "Without its strip we take no swimwear back"
  const bool lacking = is_sealable(item) && first &&
                       word_between(s, before->begin < 3 ? 0 : before->begin - 3, before->begin,
                                    {"without", "ohne", "sans", "zonder", "sin"});
  return lacking && (refusal.around || s.has_any(R::no_return, R::negation));
}

/// "Sale items can be exchanged or returned for a credit note"
bool is_either_given(const Sentence& s) {
  const auto* credit = s.first(R::credit);
  if (credit == nullptr || last_before(s, R::exchange, credit->begin) == nullptr) return false;
  return s.has_any(R::returns, R::returnable) &&
         !s.has_any(R::refund, R::refund_act, R::negation, R::no_return) &&
         word_between(s, credit->begin < 3 ? 0 : credit->begin - 3, credit->begin,
                      {"for", "contre", "gegen", "tegen"});
}

/// "Exchanged for a credit note", "only against a voucher"
bool is_for_credit(const Sentence& s, const PolicyMark& credit) {
  const auto* swap = last_before(s, R::exchange, credit.begin);
  const bool swapped =
      swap != nullptr && credit.begin <= swap->end + 3 && !is_joint(s, swap->end) &&
      word_between(s, swap->end, credit.begin, {"for", "contre", "gegen", "tegen", "por"});
  const bool against = s.has(R::only) &&
                       word_between(s, credit.begin < 2 ? 0 : credit.begin - 2, credit.begin,
                                    {"gegen", "contre", "tegen"}) &&
                       exchange_marks(s) == 1 && s.first(R::exchange)->begin >= credit.end;
  return swapped || against;
}

/// What is given where only an exchange or a credit is.
std::optional<ItemRule> given_instead(const Sentence& s) {
  const auto* credit = s.first(R::credit);
  const auto* exchange = s.first(R::exchange);
  if (credit != nullptr && is_for_credit(s, *credit)) {
    // "can be exchanged or swapped for a credit note"
    const bool both = exchange_marks(s) > 1 && exchange->end <= credit->begin;
    return both ? ItemRule::exchange_or_credit : ItemRule::credit_only;
  }
  const bool credited = credit != nullptr && !is_denied(s, *credit);
  const bool swapped = exchange != nullptr && !is_denied(s, *exchange);
  if (swapped && credited) return ItemRule::exchange_or_credit;
  if (!swapped && !credited) return std::nullopt;
  return credited ? ItemRule::credit_only : ItemRule::exchange_only;
}

bool is_refused(const Sentence& s, const PolicyMark& item, const Refusal& refusal) {
  const bool left_out =
      next_after(s, R::outside, item.end) != nullptr && s.has(R::returns) && !s.has(R::returnable);
  const bool no_money =
      s.has(R::negation) && s.has_any(R::refund, R::refund_act) && !s.has(R::outside);
  const auto* faulty = next_after(s, R::unless_faulty, item.end);
  const bool only_faulty =
      faulty != nullptr &&
      word_between(s, faulty->begin, faulty->begin + 1,
                   {"only", "nur", "uniquement", "seulement", "alleen", "enkel", "solo"});
  return only_faulty || refusal.around || refusal.before != nullptr || refusal.behind != nullptr ||
         left_out || no_money;
}

/// "Excluded: earrings, vouchers", "Not earrings, tights or .." below a heading of returns
bool is_listed_as_refused(const Sentence& s, const PolicyMark* outside) {
  const bool listed =
      outside != nullptr && outside->begin == 0 &&
      word_between(s, outside->end, outside->end + 1, {":", "sind", "ist", "sont", "zijn", "are"});
  const auto* no = s.first(R::negation);
  return listed || (s.first(R::item)->begin == 1 && no != nullptr && no->begin == 0);
}

}  // namespace

bool is_sealable(const PolicyMark& item) {
  return item.value != "made-to-order" && item.value != "personalised" &&
         item.value != "gift-cards" && item.value != "sale";
}

std::optional<ItemRule> policy_item_rule(const Sentence& s, const PolicyMark& item, bool in_list) {
  const Refusal refusal = refusal_of(s, item);
  if (needs_seal(s, item, refusal, in_list)) return ItemRule::unopened_only;
  if (is_either_given(s)) return ItemRule::exchange_or_credit;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  const bool only =
      s.has(R::only) || word_between(s, 0, size, {"but", "aber", "mais", "maar", "pero"});
  const bool no_money = s.has(R::negation) && s.has_any(R::refund, R::refund_act);
  if (s.has_any(R::exchange, R::credit) && (only || (no_money && offers_instead(s)))) {
    return given_instead(s);
  }
  const PolicyMark* outside = last_before(s, R::outside, item.begin);
  if (is_listed_as_refused(s, outside)) return ItemRule::not_returnable;
  const bool refused = in_list || is_refused(s, item, refusal);
  if (outside != nullptr && refused) return std::nullopt;
  if (refused || (outside != nullptr && s.has(R::returns))) return ItemRule::not_returnable;
  if (s.has_any(R::negation, R::exchange, R::credit)) return std::nullopt;
  // "Hats may come back": said of the item, not of its condition or a way
  const bool allowed =
      s.has(R::returns) && s.has(R::can) && !s.has_any(R::only, R::method, R::span);
  return s.has(R::returnable) || allowed ? std::optional(ItemRule::returnable) : std::nullopt;
}

}  // namespace rangebook
