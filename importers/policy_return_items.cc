// Rules for what cannot be sent back, what a return has to have, and answers to questions.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/policy_rules.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

/// The places of items in the sentence, each item once.
std::vector<const PolicyMark*> items_of(const Sentence& s) {
  std::vector<const PolicyMark*> items;
  for (const auto& mark : s.marks) {
    if (mark.role != R::item) continue;
    const auto before = mark.begin > 0 ? s.word(mark.begin - 1) : std::string_view{};
    if (before == "non" || before == "nicht") continue;  // "non-sale items"
    // "engraved jewellery" speaks of the first alone
    const bool part = !items.empty() && items.back()->end == mark.begin;
    if (!part) items.push_back(&mark);
  }
  return items;
}

/// "No refund on .., but an exchange": an exchange or credit in a clause that refuses nothing.
bool offers_instead(const Sentence& s) {
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return (one.role == R::exchange || one.role == R::credit) &&
           !clause_around(s, one).has_any(R::negation, R::no_return);
  });
}

/// "Gift cards and items reduced by 30%": a share says which of the items next to it.
bool has_share(const Sentence& s, const PolicyMark& item) {
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  const bool some =
      word_between(s, 0, size,
                   {"half", "halfte", "moitie", "helft", "mitad", "stark", "heavily", "fortement",
                    "sterk", "smell", "smells", "smelling", "riecht", "ruikt", "huele"});
  if (some) return true;
  const auto* share = s.first(R::share);
  if (share == nullptr) return false;
  const bool before = item.end <= share->begin;
  return before ? !between(s, R::item, item.end, share->begin)
                : !between(s, R::item, share->end, item.begin) &&
                      last_before(s, R::item, share->begin) == nullptr;
}

bool judges(const Sentence& part) {
  return part.has(R::item) &&
         part.has_any(R::no_return, R::only, R::exchange, R::credit, R::returnable, R::final_sale);
}

/// Where two things are said of different items: "Tights cannot come back, and sale items are for
/// exchange only". Otherwise the whole sentence.
std::vector<Sentence> judgements_of(const Sentence& s) {
  std::vector<Sentence> result;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  std::uint32_t begin = 0;
  for (std::uint32_t at = 1; at + 1 < size; ++at) {
    if (s.word(at) != ";" && s.word(at) != ",") continue;
    const auto before = part_of(s, begin, at);
    const auto after = part_of(s, at + 1, size);
    const auto* item = after.first(R::item);
    const bool own = item != nullptr && last_before(after, R::no_return, item->begin) == nullptr &&
                     item->begin <= 3;
    if (!judges(before) || !judges(after) || !own) continue;
    result.push_back(before);
    begin = at + 1;
  }
  result.push_back(part_of(s, begin, size));
  return result;
}

constexpr std::string_view kNarrowed = "The sentence may speak of some of these only.";

/// "Earrings, tights or cosmetics that have been opened": of the last one for sure, of the others
/// perhaps.
bool is_before_relative(const Sentence& s, const PolicyMark& item) {
  const auto* seal = next_after(s, R::seal, item.end);
  const auto* last = seal == nullptr ? nullptr : last_before(s, R::item, seal->begin);
  return last != nullptr && last->begin > item.begin &&
         (seal->begin == last->end ||
          word_between(s, last->end, last->end + 1, {"that", "which", "die", "qui"}) ||
          (s.word(last->end) == "," &&
           word_between(s, last->end + 1, last->end + 2, {"deren", "dessen"})));
}

/// "jewellery with an engraving"
bool is_narrowed(const Sentence& s, const PolicyMark& item) {
  static constexpr std::string_view kWords[] = {"for",  "with", "fur",  "furs", "mit", "met",
                                                "voor", "pour", "avec", "con",  "para"};
  if (is_before_relative(s, item)) return true;
  const bool sealed = next_after(s, R::seal, item.end) != nullptr &&
                      next_after(s, R::seal, item.end)->begin <= item.end + 3;
  if (sealed) return false;
  // "hats that have been worn"
  if (word_between(s, item.end, item.end + 1, {"that", "which", "qui"})) return true;
  return std::find(std::begin(kWords), std::end(kWords), s.word(item.end)) != std::end(kWords);
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

/// "Engraved jewellery": a word beside a wide kind of goods that was not understood.
bool has_strange_word(const Sentence& s, const PolicyMark& item) {
  if (item.value != "jewellery" && item.value != "shoes" && item.value != "hats") return false;
  return (item.begin > 0 && is_unread(s, item.begin - 1)) || is_unread(s, item.end);
}

/// "Swimwear where the strip is missing": a condition behind the last item that was not understood.
bool has_strange_condition(const Sentence& s) {
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  const auto* last = last_before(s, R::item, size);
  if (last == nullptr ||
      !word_between(s, last->end, last->end + 1,
                    {"where", "if",     "once",  "unless", "when",    "whose", "without",
                     "wenn",  "sofern", "falls", "ohne",   "deren",   "si",    "dont",
                     "sans",  "des",    "als",   "indien", "waarvan", "zonder"})) {
    return false;
  }
  const auto rest = part_of(s, last->end, size);
  return unread_words(rest) > 0 && !rest.has_any(R::seal, R::unless_faulty, R::faulty);
}

/// Whether the seal named behind the item is of this item.
bool is_of_seal(const Sentence& s, const PolicyMark& item, const PolicyMark& seal) {
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

/// What the sentence says about one of its items; nothing if it only mentions it.
std::optional<ItemRule> rule_for(const Sentence& s, const PolicyMark& item, bool in_list) {
  const PolicyMark* refusal = last_before(s, R::no_return, item.begin);
  if (refusal == nullptr) refusal = last_before(s, R::final_sale, item.begin);
  const PolicyMark* later = next_after(s, R::no_return, item.end);
  if (later == nullptr) later = next_after(s, R::final_sale, item.end);
  const PolicyMark* seal = next_after(s, R::seal, item.end);
  const PolicyMark* seal_before = last_before(s, R::seal, item.begin);
  const bool sealable = item.value != "made-to-order" && item.value != "personalised" &&
                        item.value != "gift-cards" && item.value != "sale";
  if (seal != nullptr && sealable && is_of_seal(s, item, *seal)) return ItemRule::unopened_only;
  // "Do not send back with a broken seal: .."
  const bool headed = seal_before != nullptr && refusal != nullptr &&
                      word_between(s, seal_before->end, item.begin, {":"}) &&
                      !between(s, R::item, 0, seal_before->begin);
  if (headed) return ItemRule::unopened_only;
  if (seal_before != nullptr && seal_before->end == item.begin) {
    return ItemRule::unopened_only;
  }
  const bool only =
      s.has(R::only) || word_between(s, 0, static_cast<std::uint32_t>(s.tokens.size()),
                                     {"but", "aber", "mais", "maar", "pero"});
  const bool left_out =
      next_after(s, R::outside, item.end) != nullptr && s.has(R::returns) && !s.has(R::returnable);
  const bool no_money = s.has(R::negation) && s.has_any(R::refund, R::refund_act);
  const bool instead = no_money && offers_instead(s);
  const auto* faulty = next_after(s, R::unless_faulty, item.end);
  const bool only_faulty =
      faulty != nullptr &&
      word_between(s, faulty->begin, faulty->begin + 1,
                   {"only", "nur", "uniquement", "seulement", "alleen", "enkel", "solo"});
  const bool refused = only_faulty || refusal != nullptr || later != nullptr || in_list ||
                       left_out || (no_money && !s.has(R::outside));
  if ((only || instead) && (s.has(R::exchange) || s.has(R::credit))) {
    const auto* credit = s.first(R::credit);
    const auto* swap = credit == nullptr ? nullptr : last_before(s, R::exchange, credit->begin);
    // "exchanged for a credit note"
    const bool for_credit =
        swap != nullptr && credit->begin <= swap->end + 3 && !is_joint(s, swap->end) &&
        word_between(s, swap->end, credit->begin, {"for", "contre", "gegen", "tegen", "por"});
    if (for_credit) return ItemRule::credit_only;
    if (s.has(R::exchange) && s.has(R::credit)) return ItemRule::exchange_or_credit;
    return s.has(R::credit) ? ItemRule::credit_only : ItemRule::exchange_only;
  }
  const PolicyMark* outside = last_before(s, R::outside, item.begin);
  // "Excluded: earrings, vouchers", as a line of its own
  const bool listed =
      outside != nullptr && outside->begin == 0 &&
      word_between(s, outside->end, outside->end + 1, {":", "sind", "ist", "sont", "zijn", "are"});
  // "Not earrings, tights or ..", below a heading of returns
  const auto* first = s.first(R::item);
  const bool refused_so =
      first->begin == 1 && s.first(R::negation) != nullptr && s.first(R::negation)->begin == 0;
  if (listed || refused_so) return ItemRule::not_returnable;
  if (outside != nullptr && refused) return std::nullopt;
  if (refused) return ItemRule::not_returnable;
  if (outside != nullptr && s.has(R::returns)) return ItemRule::not_returnable;
  if (s.has(R::returnable) && !s.has(R::negation)) return ItemRule::returnable;
  return std::nullopt;
}

}  // namespace

/// "All garments can be returned .., except swimwear": the rule, then what it leaves out.
bool ReturnRules::read_exceptions(const Sentence& s) {
  const auto* outside = s.first(R::outside);
  const auto* item = s.first(R::item);
  if (outside == nullptr || item == nullptr || item->begin < outside->end) return false;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  const auto rule = part_of(s, 0, outside->begin);
  const auto rest = part_of(s, outside->end, size);
  if (rule.has_any(R::no_return, R::negation) ||
      !rule.has_any(R::returns, R::returnable, R::exchange))
    return false;
  const bool listed = std::exchange(in_list_, true);
  read_items(rest);
  in_list_ = listed;
  read_rules(rule);
  return true;
}

void ReturnRules::open_list(const Sentence& s) {
  in_list_ = s.has(R::no_return) && !s.has(R::item);
}

bool ReturnRules::read_items(const Sentence& s) {
  bool any = false;
  for (const auto& part : judgements_of(s)) {
    for (const auto* item : items_of(part)) {
      any = true;
      const auto rule = rule_for(part, *item, in_list_);
      if (!rule) continue;
      const bool otherwise = rule == ItemRule::returnable && s.has(R::span);
      const bool narrowed = otherwise || has_strange_word(part, *item) ||
                            has_strange_condition(part) || is_narrowed(part, *item) ||
                            has_share(part, *item);
      claim(s, fmt::format("items.{}", item->value), value_text(*rule),
            std::string(narrowed ? kNarrowed : std::string_view{}));
    }
  }
  return any;
}

namespace {

constexpr std::string_view kOneItem = "The sentence speaks of certain items.";

constexpr std::string_view kMissed = "The sentence says what holds where it is not so.";

constexpr std::string_view kWish = "It may be a wish, not a condition.";

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

/// "Shoes must not have been worn": the item is what the condition is about.
bool is_of_item(const Sentence& s, const PolicyMark& need) {
  const auto clause = clause_around(s, need);
  const auto* item = clause.first(R::item);
  const auto* own = clause.first(R::need);
  return item != nullptr && own != nullptr && item->begin < own->begin &&
         !s.has_any(R::no_return, R::outside, R::final_sale);
}

}  // namespace

void ReturnRules::read_needs(const Sentence& s) {
  for (const auto& mark : s.marks) {
    if (mark.role != R::need) continue;
    const bool waived = clause_around(s, mark).has(R::not_needed);
    // "print the label": one for the parcel
    if (mark.value == to_string(ReturnCondition::tags_on) && s.has(R::label)) continue;
    // "Without a receipt you get a credit": needed only where it is refused otherwise.
    const bool without = word_between(s, mark.begin < 3 ? 0 : mark.begin - 3, mark.begin,
                                      {"without", "no", "ohne", "zonder"}) ||
                         word_between(s, mark.begin < 8 ? 0 : mark.begin - 8, mark.begin,
                                      {"without", "ohne", "zonder"});
    const bool state = mark.value == to_string(ReturnCondition::unworn) ||
                       mark.value == to_string(ReturnCondition::unwashed);
    if (without && !state && !s.has(R::no_return)) continue;
    const auto* wish = last_before(s, R::soft, mark.begin);
    // "the date shown on your packing slip": no condition
    const bool named = word_between(s, mark.begin < 4 ? 0 : mark.begin - 4, mark.begin,
                                    {"shown", "stated", "printed", "listed", "angegeben", "indique",
                                     "indiquee", "vermeld", "indicada"});
    if (named) continue;
    // "Print a label from our returns portal"
    const bool printed = mark.value == to_string(ReturnCondition::request_first) &&
                         s.has_any(R::label, R::return_form);
    const bool soft = wish != nullptr && wish->end + 5 >= mark.begin &&
                      !between(s, R::need, wish->end, mark.begin);
    std::string doubt;
    if (soft || printed) doubt = kWish;
    if (is_of_item(s, mark)) doubt = kOneItem;
    if (is_missed(s, mark)) doubt = kMissed;
    if (is_kept_until(s, mark)) doubt = kWish;
    const auto* swap = s.first(R::exchange);
    const bool label = swap != nullptr && swap->begin == 0 && s.word(swap->end) == ":";
    const bool asks = label && mark.value == to_string(ReturnCondition::request_first);
    if (is_swap_only(s) && (asks || s.has(R::only))) doubt = kSwap;
    claim(s, fmt::format("needs.{}", mark.value), value_text(!waived), doubt);
  }
}

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
