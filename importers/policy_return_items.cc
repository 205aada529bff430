// Rules for what cannot be sent back, or only for an exchange or a credit.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/policy_rules.h"
#include "schema/terms_values.h"

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

constexpr std::uint32_t kShortEllipsis = 9;
constexpr std::size_t kLongestTitle = 6;

/// ".., but face coverings are not", ".., hoeden wel": what was said before, or its contrary.
std::optional<ItemRule> rule_by_last_word(const Sentence& part) {
  auto size = static_cast<std::uint32_t>(part.tokens.size());
  while (size > 0 && is_stop(part.word(size - 1))) --size;
  if (size < 2 || size > kShortEllipsis || judges(part) || !part.has(R::item)) return std::nullopt;
  if (word_between(part, size - 1, size,
                   {"not", "nicht", "non", "pas", "niet", "cannot", "can't"})) {
    return ItemRule::not_returnable;
  }
  if (word_between(part, size - 1, size, {"wel", "schon", "oui", "are", "can", "may", "is"})) {
    return ItemRule::returnable;
  }
  return std::nullopt;
}

/// True where one statement of a sentence may end and the next begin.
bool parts_at(const Sentence& s, std::uint32_t at) {
  const std::string_view word = s.word(at);
  return word == ";" || word == "," ||
         word_between(s, at, at + 1, {"but", "aber", "mais", "maar", "pero", "while", "whereas"});
}

/// Where two things are said of different items: "Tights cannot come back, and sale items are for
/// exchange only". Otherwise the whole sentence.
std::vector<Sentence> judgements_of(const Sentence& s) {
  std::vector<Sentence> result;
  const auto size = static_cast<std::uint32_t>(s.tokens.size());
  std::uint32_t begin = 0;
  for (std::uint32_t at = 1; at + 1 < size; ++at) {
    if (!parts_at(s, at)) continue;
    const auto before = part_of(s, begin, at);
    const auto after = part_of(s, at + 1, size);
    const auto* item = after.first(R::item);
    const bool own = item != nullptr && last_before(after, R::no_return, item->begin) == nullptr &&
                     item->begin <= 3;
    const bool contrary = rule_by_last_word(after).has_value();
    const bool allowed = after.has(R::returns) && after.has(R::can) && !after.has(R::negation);
    if (!judges(before) || !own || (!judges(after) && !contrary && !allowed)) continue;
    result.push_back(before);
    begin = at + 1;
  }
  result.push_back(part_of(s, begin, size));
  return result;
}

constexpr std::string_view kNarrowed = "The sentence may speak of some of these only.";

/// Goods that may have a seal or a strip.
bool is_sealable(const PolicyMark& item) {
  return item.value != "made-to-order" && item.value != "personalised" &&
         item.value != "gift-cards" && item.value != "sale";
}

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
  if (is_sealable(item) && is_before_relative(s, item)) return true;
  const bool sealed = next_after(s, R::seal, item.end) != nullptr &&
                      next_after(s, R::seal, item.end)->begin <= item.end + 3;
  if (sealed) return false;
  // "hats that have been worn"
  if (word_between(s, item.end, item.end + 1, {"that", "which", "qui"})) return true;
  // "Huete, die getragen wurden", but not "Huete, die Ohrringe"
  const auto* listed = next_after(s, R::item, item.end);
  const bool relative = s.word(item.end) == "," &&
                        word_between(s, item.end + 1, item.end + 2, {"die", "der", "das", "que"}) &&
                        (listed == nullptr || listed->begin > item.end + 3);
  if (relative) return true;
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

/// "Worn clothes and shoes": of worn ones alone.
bool is_of_worn(const Sentence& s, const PolicyMark& item) {
  const auto* need = last_before(s, R::need, item.begin);
  return need != nullptr && need->end + 2 >= item.begin && need->value == "worn-goods";
}

/// "Hats cannot be returned once worn", "goods marked final sale": some of them.
bool is_of_some(const Sentence& s, const PolicyMark& item) {
  if (item.value == "sale" && word_between(s, item.begin, item.end, {"final"})) return true;
  const auto* worn = next_after(s, R::need, item.end);
  return worn != nullptr && worn->begin > 0 && s.has(R::no_return) &&
         word_between(s, worn->begin < 2 ? 0 : worn->begin - 2, worn->begin,
                      {"once", "when", "if", "wenn", "sobald", "fois", "zodra", "eenmaal"});
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

std::ptrdiff_t exchange_marks(const Sentence& s) {
  return std::count_if(s.marks.begin(), s.marks.end(),
                       [](const PolicyMark& one) { return one.role == R::exchange; });
}

/// "May be exchanged but not credited"
bool is_denied(const Sentence& s, const PolicyMark& given) {
  const auto* no = last_before(s, R::negation, given.begin);
  return no != nullptr && no->end + 1 >= given.begin;
}

/// What the sentence says about one of its items; nothing if it only mentions it.
std::optional<ItemRule> rule_for(const Sentence& s, const PolicyMark& item, bool in_list) {
  const PolicyMark* refusal = last_before(s, R::no_return, item.begin);
  if (refusal == nullptr) refusal = last_before(s, R::final_sale, item.begin);
  const PolicyMark* later = next_after(s, R::no_return, item.end);
  if (later == nullptr) later = next_after(s, R::final_sale, item.end);
  // "We take no underwear back"
  const bool enclosed = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::no_return && one.begin < item.begin && one.end > item.end;
  });
  const PolicyMark* seal = next_after(s, R::seal, item.end);
  const PolicyMark* seal_before = last_before(s, R::seal, item.begin);
  const bool sealable = is_sealable(item);
  // not "Our swimwear comes with a hygiene strip"
  const bool judged = in_list || enclosed ||
                      s.has_any(R::no_return, R::final_sale, R::only, R::negation, R::outside) ||
                      s.has_any(R::returns, R::returnable, R::exchange, R::refund, R::need);
  const bool described =
      seal != nullptr && !judged &&
      !word_between(s, item.end, seal->begin,
                    {"must", "should", "muss", "mussen", "doit", "doivent", "moet", "moeten"}) &&
      word_between(s, item.end, seal->begin,
                   {"comes", "come", "supplied", "fitted", "has", "have", "kommt", "hat", "haben",
                    "geliefert", "livre", "livres", "heeft", "hebben", "tiene", "tienen"});
  if (seal != nullptr && sealable && !described && is_of_seal(s, item, *seal)) {
    return ItemRule::unopened_only;
  }
  // "Do not send back with a broken seal: .."
  const bool headed = seal_before != nullptr && refusal != nullptr &&
                      word_between(s, seal_before->end, item.begin, {":"}) &&
                      !between(s, R::item, 0, seal_before->begin);
  if (headed) return ItemRule::unopened_only;
  if (seal_before != nullptr && seal_before->end == item.begin) {
    return ItemRule::unopened_only;
  }
  // "Without its strip we take no swimwear back"
  const bool lacking =
      seal_before != nullptr && sealable && !between(s, R::item, 0, seal_before->begin) &&
      word_between(s, seal_before->begin < 3 ? 0 : seal_before->begin - 3, seal_before->begin,
                   {"without", "ohne", "sans", "zonder", "sin"});
  if (lacking && (enclosed || s.has_any(R::no_return, R::negation))) return ItemRule::unopened_only;
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
  const bool refused = only_faulty || enclosed || refusal != nullptr || later != nullptr ||
                       in_list || left_out || (no_money && !s.has(R::outside));
  // "Sale items can be exchanged or returned for a credit note"
  const auto* note = s.first(R::credit);
  const bool either = note != nullptr && s.has_any(R::returns, R::returnable) &&
                      s.has(R::exchange) &&
                      !s.has_any(R::refund, R::refund_act, R::negation, R::no_return) &&
                      word_between(s, note->begin < 3 ? 0 : note->begin - 3, note->begin,
                                   {"for", "contre", "gegen", "tegen"});
  if (either && last_before(s, R::exchange, note->begin) != nullptr) {
    return ItemRule::exchange_or_credit;
  }
  if ((only || instead) && (s.has(R::exchange) || s.has(R::credit))) {
    const auto* credit = s.first(R::credit);
    const auto* swap = credit == nullptr ? nullptr : last_before(s, R::exchange, credit->begin);
    // "exchanged for a credit note"
    const bool for_credit =
        swap != nullptr && credit->begin <= swap->end + 3 && !is_joint(s, swap->end) &&
        word_between(s, swap->end, credit->begin, {"for", "contre", "gegen", "tegen", "por"});
    // "only against a voucher"
    const bool against = credit != nullptr && s.has(R::only) && credit->begin > 0 &&
                         word_between(s, credit->begin < 2 ? 0 : credit->begin - 2, credit->begin,
                                      {"gegen", "contre", "tegen"}) &&
                         exchange_marks(s) == 1 && s.first(R::exchange)->begin >= credit->end;
    // "can be exchanged or swapped for a credit note"
    if (for_credit && exchange_marks(s) > 1) return ItemRule::exchange_or_credit;
    if (for_credit || against) return ItemRule::credit_only;
    const bool credited = credit != nullptr && !is_denied(s, *credit);
    const auto* exchange = s.first(R::exchange);
    const bool swapped = exchange != nullptr && !is_denied(s, *exchange);
    if (swapped && credited) return ItemRule::exchange_or_credit;
    if (!swapped && !credited) return std::nullopt;
    return credited ? ItemRule::credit_only : ItemRule::exchange_only;
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
  if (s.has(R::negation)) return std::nullopt;
  if (s.has_any(R::exchange, R::credit)) return std::nullopt;
  // "Hats may come back": said of the item, not of its condition or a way
  const bool allowed =
      s.has(R::returns) && s.has(R::can) && !s.has_any(R::only, R::method, R::span);
  if (s.has(R::returnable) || allowed) return ItemRule::returnable;
  return std::nullopt;
}

}  // namespace

std::vector<const PolicyMark*> items_of(const Sentence& s) {
  std::vector<const PolicyMark*> items;
  for (const auto& mark : s.marks) {
    if (mark.role != R::item) continue;
    const auto before = mark.begin > 0 ? s.word(mark.begin - 1) : std::string_view{};
    if (before == "non" || before == "nicht") continue;  // "non-sale items"
    // "to be tried on over underwear"
    if (word_between(s, mark.begin < 2 ? 0 : mark.begin - 2, mark.begin,
                     {"over", "uber", "dessus", "own"}) &&
        mark.value == "underwear") {
      continue;
    }
    // "engraved jewellery" speaks of the first alone
    const bool part = !items.empty() && items.back()->end == mark.begin;
    // "bijoux personnalises" speaks of the second alone
    const bool made = mark.value == "personalised" || mark.value == "made-to-order";
    const bool named =
        part && made && (items.back()->value == "jewellery" || mark.value == "personalised");
    if (named) items.back() = &mark;
    if (!part) items.push_back(&mark);
  }
  return items;
}

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

/// The rule for an item of a part of the sentence; "The same goes for hats" takes the one before.
std::optional<ItemRule> ReturnRules::item_rule(const Sentence& part, const PolicyMark& item,
                                               bool whole) const {
  if (!whole) {
    if (const auto rule = rule_by_last_word(part)) return rule;
  }
  if (last_rule_ && part.has(R::likewise) && !judges(part)) return last_rule_;
  // "60 days to send it back; that goes for sale items too"
  const bool refused = part.has_any(R::no_return, R::negation, R::final_sale);
  if (part.has(R::likewise) && part.has(R::returns) && !refused && !part.has(R::only)) {
    return ItemRule::returnable;
  }
  return rule_for(part, item, in_list_);
}

bool ReturnRules::read_items(const Sentence& s) {
  bool any = false;
  std::optional<ItemRule> last;
  const auto parts = judgements_of(s);
  for (const auto& part : parts) {
    for (const auto* item : items_of(part)) {
      any = true;
      const auto rule = item_rule(part, *item, parts.size() == 1);
      if (!rule) continue;
      last = rule;
      const bool otherwise = rule == ItemRule::returnable && s.has(R::span);
      const bool narrowed = otherwise || has_strange_word(part, *item) ||
                            has_strange_condition(part) || is_narrowed(part, *item) ||
                            is_of_worn(part, *item) || is_of_some(part, *item) ||
                            has_share(part, *item);
      claim(s, fmt::format("items.{}", item->value), value_text(*rule),
            std::string(narrowed ? kNarrowed : std::string_view{}));
    }
  }
  last_rule_ = last;
  if (!any) read_below_title(s);
  if (any && !last) note_title(s);
  return any;
}

/// A line that names goods and says nothing of them: "Swimwear".
void ReturnRules::note_title(const Sentence& s) {
  const bool title = s.tokens.size() <= kLongestTitle && s.marks.size() <= 3 && !in_list_ &&
                     !s.text.ends_with('.') && unread_words(s) <= 1;
  title_ = title ? std::optional(s) : std::nullopt;
  title_age_ = 0;
}

/// "Swimwear", and below it "Returned only with its strip"
void ReturnRules::read_below_title(const Sentence& s) {
  if (!title_ || unread_words(s) > 1) return;
  Sentence both = *title_;
  const auto shift = static_cast<std::uint32_t>(both.tokens.size());
  both.tokens.insert(both.tokens.end(), s.tokens.begin(), s.tokens.end());
  for (PolicyMark mark : s.marks) {
    mark.begin += shift;
    mark.end += shift;
    both.marks.push_back(mark);
  }
  for (const auto* item : items_of(*title_)) {
    const auto rule = rule_for(both, *item, false);
    if (!rule || rule == ItemRule::returnable) continue;
    claim(s, fmt::format("items.{}", item->value), value_text(*rule));
  }
}

}  // namespace rangebook
