// Rules for the way back: which methods there are, who pays, how much.
#include <algorithm>
#include <utility>

#include "importers/byte_search.h"
#include "importers/policy_return_ways.h"
#include "importers/policy_rules.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

bool states_cost(const Sentence& part) { return part.has_any(R::free, R::payer, R::money); }

constexpr std::string_view kPostAlone = "It may be the cost of the post alone.";
constexpr std::string_view kUnread = "A way or a condition may be named that was not understood.";

/// "Free at our partner bakeries": a place, a way or a condition in words that were not understood.
bool has_unread_way(const Sentence& part) {
  static constexpr std::string_view kLeads[] = {
      "in",      "at",   "via",      "through", "using", "bei",  "beim",   "uber",
      "mittels", "dans", "en",       "aux",     "chez",  "bij",  "langs",  "if",
      "when",    "wenn", "sofern",   "falls",   "si",    "mits", "indien", "als",
      "unless",  "to",   "provided", "par",     "by",    "per",  "from"};
  static constexpr std::string_view kKnown[] = {
      "us",    "our",         "the",      "your",    "you",       "uns",      "unsere",   "unserem",
      "dir",   "ihnen",       "nous",     "vous",    "ons",       "onze",     "je",       "een",
      "de",    "het",         "all",      "any",     "every",     "case",     "full",     "jedem",
      "fall",  "tout",        "cas",      "elk",     "geval",     "charge",   "aucun",    "the",
      "that",  "this",        "diesem",   "der",     "dem",       "den",      "la",       "le",
      "les",   "cost",        "no",       "total",   "uk",        "addition", "rekening", "cover",
      "pay",   "parcel",      "package",  "paket",   "colis",     "pakket",   "box",      "label",
      "konto", "kundenkonto", "account",  "compte",  "espace",    "portal",   "portail",  "cuenta",
      "site",  "website",     "webseite", "etikett", "etiquette", "use",      "using",    "our",
      "hohe",  "for"};
  for (std::uint32_t at = 0; at + 1 < part.tokens.size(); ++at) {
    if (std::find(std::begin(kLeads), std::end(kLeads), part.word(at)) == std::end(kLeads))
      continue;
    for (std::uint32_t next = at + 1; next < part.tokens.size() && next <= at + 5; ++next) {
      const auto word = part.word(next);
      if (!is_ascii_letter(word[0])) break;
      if (word.size() < 3) continue;
      if (std::find(std::begin(kKnown), std::end(kKnown), word) != std::end(kKnown)) continue;
      if (is_plain_word(word)) continue;
      const bool marked = std::any_of(part.marks.begin(), part.marks.end(), [&](const auto& one) {
        return one.begin <= next && next < one.end;
      });
      if (!marked) return true;
      break;
    }
  }
  return false;
}

}  // namespace

/// Parts that speak of the same methods and the same cost.
struct ReturnRules::CostGroup {
  std::vector<std::string_view> methods;
  bool cost = false;
  bool free = false;
  bool prepaid = false;  ///< .. as the label is paid for
  bool negated = false;
  bool refused = false;  ///< these ways, beside others that hold
  bool returns = false;  ///< it says so itself
  bool threshold = false;
  bool starting = false;
  bool unread = false;
  bool apart = false;    ///< the way before is one of two
  bool unnamed = false;  ///< other costs of the sentence are of a method
  std::string_view payer;
  std::vector<Money> fees;

  void add(const Sentence& part) {
    for (const auto& mark : part.marks) {
      if (mark.role == R::method &&
          std::find(methods.begin(), methods.end(), mark.value) == methods.end()) {
        methods.push_back(mark.value);
      }
      if (mark.role == R::payer) payer = mark.value;
      if (mark.role == R::money && mark.money) fees.push_back(*mark.money);
    }
    free = free || part.has(R::free);
    prepaid = prepaid || (part.has(R::free) && part.first(R::free)->value == "prepaid");
    negated = negated || part.has_any(R::negation, R::no_return, R::final_sale);
    // "Nothing can be returned to our shops"
    const bool nothing = word_between(part, 0, static_cast<std::uint32_t>(part.tokens.size()),
                                      {"nothing", "nichts", "rien", "niets", "nada"});
    negated = negated || (nothing && !states_cost(part));
    returns = returns || part.has_any(R::returns, R::final_sale, R::no_return, R::return_form);
    unread = unread || (part.has_any(R::free, R::money) && has_unread_way(part)) ||
             (part.has(R::kind) && !part.has(R::method)) ||
             word_between(part, 0, static_cast<std::uint32_t>(part.tokens.size()),
                          {"dort", "daar", "alli"});
    threshold = threshold || (part.has(R::money) && part.has_any(R::over, R::order, R::or_more));
    for (const auto& mark : part.marks) {
      const bool starts =
          mark.role == R::from &&
          std::any_of(part.marks.begin(), part.marks.end(), [&](const PolicyMark& one) {
            return one.role == R::money && one.begin >= mark.end && one.begin <= mark.end + 1;
          });
      starting = starting || starts;
    }
    cost = cost || states_cost(part);
  }
};

void ReturnRules::claim_free(const Sentence& s, std::string_view prefix, const std::string& doubt) {
  claim(s, std::string(prefix) + "paid_by", "shop", doubt);
  if (frame_.currency) {
    claim(s, std::string(prefix) + "fee", value_text(Money{0, *frame_.currency}), doubt);
  }
}

namespace {

bool is_alternative(const Sentence& s) {
  return word_between(
      s, 0, static_cast<std::uint32_t>(s.tokens.size()),
      {"or", "nor", "and", ",", "oder", "noch", "und", "ou", "ni", "et", "of", "en"});
}

}  // namespace

/// Why the cost of a group may not hold for every return; empty where it does.
std::string ReturnRules::doubt_of_cost(const Sentence& s, const CostGroup& group, bool told) const {
  if (is_for_credit(s)) return std::string(kSwap);
  // "The money we do not pay out"
  const bool refuses_money = group.payer == "shop" && group.negated && group.methods.empty() &&
                             !s.has_any(R::returns, R::return_form, R::sending);
  if (refuses_money || s.has(R::other_service)) return std::string(kUnread);  // "you pay any duty"
  const bool named = asked_ || carries_ || in_row_ || !section_.empty() || !group.methods.empty() ||
                     s.has_any(R::returns, R::return_form, R::returnable, R::exchange);
  const bool loose = !group.fees.empty() || is_unread(s, 0);  // "Otherwise you pay"
  const auto unread = unread_words(s);
  if ((!told && unread > 1) || (!named && loose && unread > 0)) return std::string(kUnreadWords);
  // "UK customers may use our label, the cost of which (3.00) is deducted"
  const bool offered_there =
      s.has(R::region) && s.has(R::can) && s.has_any(R::return_form, R::label);
  const bool loose_fee = group.methods.empty() && !group.fees.empty();
  if ((group.unnamed && group.cost) || (offered_there && loose_fee)) {
    return "It is not clear which way back the cost is for.";
  }
  // "Hand it in at a strange place: the cost is 3.50"
  const bool handed = word_between(s, 0, 3,
                                   {"lever", "hand", "drop", "deposez", "geben", "gib", "breng",
                                    "bring", "remettez", "entrega"});
  const bool strange = group.unread || (handed && !s.has(R::method));
  if (strange && group.methods.empty()) return std::string(kUnread);
  if (group.starting) return "The amount is where prices start.";
  if (s.has(R::smaller) && !group.threshold) return "It depends on what is said before.";
  // "Returns received after 30 days are sent back to you for 5.00"
  const bool late = group.cost && is_late(s) && loose_fee;
  // "If you spent over 50, returns are free"
  const bool by_value =
      s.has(R::money) &&
      ((s.has(R::order) && s.has(R::from)) ||
       ((s.has(R::order) || group.free) && s.has_any(R::over, R::under, R::or_more)));
  if (group.threshold || (by_value && !late)) return "It depends on the value of the order.";
  return late ? "It may be the time after which something else holds." : "";
}

/// The ways a group names; their prefixes are given back.
std::vector<std::string> ReturnRules::claim_ways(const Sentence& s, const CostGroup& group,
                                                 const std::string& doubt,
                                                 const std::string& handed_doubt, bool told) {
  std::vector<std::string> places;
  for (const auto method : group.methods) {
    const bool offered = !group.negated || group.cost;
    const bool below = headed_ || asked_ || s.has_any(R::returns, R::return_form, R::label);
    // "Take the parcel to the post" may mean a box as well
    const bool handed = below && ((method != "post" && hands_over(s)) || is_labelled(s));
    if (!group.cost && !group.returns && !handed && s.kind == PolicyLineKind::text) continue;
    // "Do not post returns to our shops": a way to another
    const bool mixed = !offered && group.methods.size() > 1 && !is_alternative(s);
    const std::string& why = told || handed ? handed_doubt : doubt;
    claim(s, method, value_text(offered), mixed ? std::string(kUnreadWords) : why);
    places.push_back(std::string(method) + ".");
  }
  return places;
}

/// Who pays, and how much, for one way or for all.
void ReturnRules::claim_cost(const Sentence& s, const CostGroup& group, const std::string& place,
                             const std::string& doubt) {
  const bool shop_pays =
      (group.free && !group.negated) || (group.payer == "shop" && !group.negated);
  const bool nothing = group.fees.size() == 1 && group.fees.front().minor == 0;
  const bool free = group.fees.empty() && shop_pays && group.payer != "customer";
  if (nothing || free) {
    weak_ = group.prepaid;
    claim_free(s, place, doubt);
    weak_ = false;
  } else if (group.fees.size() == 1 && !(group.free && !group.negated)) {
    claim(s, place + "paid_by", "customer", doubt);
    claim(s, place + "fee", value_text(group.fees.front()), doubt);
  } else if (!group.fees.empty()) {
    claim(s, place + "fee", value_text(group.fees.front()), "Several costs stand side by side.");
  } else if (group.free || group.payer == "shop" || !group.negated) {
    claim(s, place + "paid_by", "customer", doubt);
  }
}

void ReturnRules::claim_group(const Sentence& s, const CostGroup& group) {
  const auto ways = std::count_if(s.marks.begin(), s.marks.end(),
                                  [](const PolicyMark& one) { return one.role == R::method; });
  const bool told = asked_ || carries_ || in_row_ || headed_ || !section_.empty() ||
                    s.kind != PolicyLineKind::text || ways > 1 ||
                    s.has_any(R::returns, R::exchange, R::returnable, R::return_form) ||
                    s.has_any(R::no_return, R::refund, R::payer);
  // "Swaps in our shops only", "Swapping in the shop is free"
  const bool swaps = is_swap_only(s) && (s.has(R::only) || (group.cost && !group.methods.empty()));
  const std::string swap(swaps ? kSwap : std::string_view{});
  const std::string doubt = swaps ? swap : doubt_of_cost(s, group, told);
  auto places = claim_ways(s, group, doubt, swap, told);
  if (!group.cost) return;
  if (places.empty()) places.emplace_back();
  for (const auto& place : places) claim_cost(s, group, place, doubt);
}

void ReturnRules::open_section(const Sentence& heading) {
  section_.clear();
  headed_ = heading.has_any(R::returns, R::return_form);
  if (!heading.has_any(R::returns, R::return_form)) return;
  for (const auto& mark : heading.marks) {
    const bool known = std::find(section_.begin(), section_.end(), mark.value) != section_.end();
    if (mark.role == R::method && !known) section_.push_back(mark.value);
  }
}

/// How a part stands to the group before it.
struct ReturnRules::Joint {
  bool opens = false;    ///< a group of its own begins
  bool parted = false;   ///< .. of the same statement, with another way
  bool refused = false;  ///< the part refuses what it names
};

ReturnRules::Joint ReturnRules::joint_of(const std::vector<Sentence>& parts, std::size_t i,
                                         const CostGroup& last) {
  const Sentence& part = parts[i];
  const bool way = part.has(R::method);
  // "Free by post or in store": what follows without a word of its own shares the cost.
  const auto next = std::find_if(parts.begin() + static_cast<std::ptrdiff_t>(i) + 1, parts.end(),
                                 [](const Sentence& one) { return states_cost(one); });
  const bool either =
      i > 0 && next != parts.end() && next->has(R::method) && is_either(parts[i - 1], part);
  const bool shares = !last.methods.empty() && !states_cost(part) &&
                      (next == parts.end() || either) &&
                      !part.has_any(R::returns, R::can, R::no_return, R::negation);
  // "by post, or to our shop where it's free"
  const auto size = static_cast<std::uint32_t>(part.tokens.size());
  const bool there = !last.methods.empty() && way && states_cost(part) &&
                     word_between(part, 1, size, {"where", "wo", "ou", "waar"});
  // "Free returns, in store or at a parcel shop"
  const bool named_behind =
      i > 0 && last.methods.empty() && last.free && !last.negated && last.returns &&
      !states_cost(part) && next == parts.end() && way && part.first(R::method)->begin <= 1 &&
      !part.has_any(R::can, R::returns, R::no_return, R::negation) && unread_words(part) == 0 &&
      !word_between(part, 1, size, {"ebenso", "also", "auch", "aussi", "ook", "too"});
  // "no longer free by parcel shop: 1.99 is deducted"
  const bool instead = !last.methods.empty() && last.free && last.negated && last.fees.empty() &&
                       !way && part.has(R::money);
  Joint joint;
  joint.refused = part.has_any(R::negation, R::no_return, R::final_sale);
  joint.parted = way && parts_ways(part, last, joint.refused);
  joint.opens = (last.cost && !shares && !named_behind && !instead) || there || joint.parted;
  return joint;
}

/// "At a parcel shop or by courier for 4.00"; "in our shops only; not by post", "not by post, only
/// in our shops"
bool ReturnRules::parts_ways(const Sentence& part, const CostGroup& last, bool refused) {
  if (last.methods.empty() || last.cost) return false;
  if (refused) return !last.negated;
  if (part.has(R::money)) {
    return part.first(R::method)->value == "courier" && last.methods.front() != "courier";
  }
  return last.negated && (part.has_any(R::only, R::can, R::returns) || hands_over(part));
}

/// The parts of the sentence that share a cost.
std::vector<ReturnRules::CostGroup> ReturnRules::groups_of(const Sentence& s) {
  const auto parts = parts_of(s);
  const bool way_back =
      s.has(R::payer) && s.has_any(R::returns, R::return_form, R::method) && !s.has(R::refund);
  const bool sent_apart = s.has(R::first_delivery) && !way_back;
  std::vector<CostGroup> groups(1);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Sentence& part = parts[i];
    if (!part.has(R::method) && !states_cost(part)) continue;
    if (sent_apart && (part.has(R::first_delivery) || !part.has(R::return_form))) continue;
    // "an exchange is free": of another way
    if (part.has(R::exchange) && !part.has(R::returns) && groups.back().cost) continue;
    const Joint joint = joint_of(parts, i, groups.back());
    const bool of_returns = groups.back().returns;
    // "In our shops but not by post, and it's free"
    if (!joint.opens && groups.back().refused && !part.has(R::method) && groups.size() > 1) {
      groups[groups.size() - 2].add(part);
      continue;
    }
    if (joint.opens) groups.emplace_back();
    CostGroup& group = groups.back();
    if (joint.parted) group.returns = of_returns;
    if (joint.parted) group.refused = joint.refused;
    group.add(part);
    // "Returns within 14 days, in store only"
    const bool of_sentence = s.has(R::returns) && part.has(R::only) && unread_words(part) == 0;
    // "Returns: 1.99, in store free"
    const bool headed = i > 0 && !part.has(R::method) && !states_cost(parts[i - 1]) &&
                        !parts[i - 1].has(R::method) &&
                        parts[i - 1].has_any(R::returns, R::return_form);
    group.returns = group.returns || of_sentence || headed;
  }
  return groups;
}

void ReturnRules::read_costs(const Sentence& s) {
  if (s.has(R::restocking) || (s.has(R::item) && !only_includes(s))) return;
  if (section_.empty() && is_of_exchange(s)) return;
  const auto earlier = std::exchange(methods_, {});
  const bool either = std::exchange(either_, has_other_way(s));
  auto groups = groups_of(s);
  const bool speaks_of_returns =
      s.has_any(R::returns, R::return_form, R::method, R::payer) ||
      (!earlier.empty() && s.has(R::money) && s.has_any(R::refund, R::refund_act)) ||
      is_short_free(s, !earlier.empty()) || (earlier.size() == 1 && begins_free(s)) ||
      (earlier.size() == 1 && deducts(s)) || ((headed_ || asked_) && names_free_label(s)) ||
      (asked_cost_ && s.has(R::money) && unread_words(s) == 0) || !section_.empty() ||
      (carries_ && s.has_any(R::free, R::money));
  if (!speaks_of_returns) return;
  if (s.has(R::kept_below) && s.has(R::charged_after)) return;
  for (const auto& group : groups) {
    methods_.insert(methods_.end(), group.methods.begin(), group.methods.end());
  }
  const bool alone = groups.size() == 1 && groups.front().methods.empty();
  if (alone && groups.front().cost && !section_.empty()) {
    groups.front().methods = section_;
  } else if (alone && (s.has(R::money) || is_short_free(s, true) || begins_free(s)) &&
             (earlier.size() == 1 || means_both(s))) {
    // "Drop it at a parcel shop or book a courier. We keep 2.49": of no way by itself
    groups.front().methods = earlier;
    groups.front().apart = either || gives_more(s);
  }
  // "Post it back to us. The postage is yours to pay."
  const bool by_post = earlier.size() == 1 && earlier.front() == "post" && is_postage(s);
  if (alone && groups.front().payer == "customer" && by_post && !groups.front().returns)
    groups.front().methods = earlier;
  const bool named = std::any_of(groups.begin(), groups.end(),
                                 [](const CostGroup& one) { return !one.methods.empty(); });
  // "You pay to us, we pay back to you"
  const bool both = std::any_of(groups.begin(), groups.end(),
                                [](const CostGroup& one) { return one.payer == "customer"; }) &&
                    std::any_of(groups.begin(), groups.end(),
                                [](const CostGroup& one) { return one.payer == "shop"; });
  for (auto& group : groups) {
    group.unread = group.unread || both;
    group.unnamed = group.apart || (named && group.methods.empty() && !group.returns);
    if (group.cost || !group.methods.empty()) claim_group(s, group);
  }
}

/// "Use our prepaid label. We deduct 2.99": it was not free.
void ReturnRules::drop_prepaid() {
  const auto tells = [](const PolicyClaim& one) {
    return !one.weak && (one.field == "return.paid_by" || one.field == "return.post.paid_by" ||
                         one.field == "return.drop-off.paid_by");
  };
  const auto& all = claims_.all();
  if (std::none_of(all.begin(), all.end(), tells)) return;
  claims_.remove_weak("return.");
}

/// "Post it back to us. Return postage is yours to pay": of that way alone?
void ReturnRules::finish() {
  drop_prepaid();
  const auto* post = claims_.stated("return.post");
  if (post == nullptr || post->text != "yes") return;
  const auto of_post = [](const PolicyClaim& claim) {
    const auto tokens = policy_tokens(claim.sentence);
    return std::any_of(tokens.begin(), tokens.end(),
                       [](const PolicyToken& one) { return one.word == "postage"; });
  };
  claims_.doubt("return.paid_by", kPostAlone, of_post);
  claims_.doubt("return.fee", kPostAlone, of_post);
}

}  // namespace rangebook
