// Rules for what cannot be sent back, or only for an exchange or a credit.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/policy_item_rule.h"
#include "importers/policy_rules.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

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

/// "Worn clothes and shoes": of worn ones alone.
bool is_of_worn(const Sentence& s, const PolicyMark& item) {
  const auto* need = last_before(s, R::need, item.begin);
  return need != nullptr && need->end + 2 >= item.begin && need->value == "worn-goods";
}

/// "Hats cannot be returned once worn", "goods marked final sale": some of them.
bool is_of_some(const Sentence& s, const PolicyMark& item) {
  if (item.value == "sale" && word_between(s, item.begin, item.end, {"final"})) return true;
  if (!s.has(R::no_return)) return false;
  for (auto at = item.end; at + 1 < s.tokens.size(); ++at) {
    const bool once = word_between(
        s, at, at + 1, {"once", "when", "if", "wenn", "sobald", "fois", "zodra", "eenmaal"});
    const bool worn = word_between(s, at + 1, at + 2,
                                   {"worn", "used", "washed", "getragen", "benutzt", "porte",
                                    "portes", "portees", "gedragen", "gebruikt"});
    if (once && worn) return true;
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
  return policy_item_rule(part, item, in_list_);
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
    const auto rule = policy_item_rule(both, *item, false);
    if (!rule || rule == ItemRule::returnable) continue;
    claim(s, fmt::format("items.{}", item->value), value_text(*rule));
  }
}

}  // namespace rangebook
