// Rules for delivery fees: limits paired with what they are for, steps by value and weight.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "importers/policy_amounts.h"
#include "importers/policy_clause.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

using R = PolicyRole;
using Sentence = PolicySentence;

constexpr std::string_view kStarting = "The amount is where prices start.";
constexpr std::string_view kSeveral = "Several amounts stand side by side.";
constexpr std::string_view kPerItem = "The fee is for each item.";
constexpr std::string_view kAdded = "The amount comes on top of another one.";
constexpr std::string_view kBeyond = "It is free beyond a value that was not understood.";
constexpr std::string_view kUnreadGift = "What is free was not understood.";
constexpr std::string_view kOthers = "It is said of others than the sentence before.";
constexpr std::string_view kCondition = "It is free under a condition.";

/// "Free if you live here. Everyone else pays 10.00"
bool is_of_others(const Sentence& s) {
  return !s.has(R::region) &&
         word_between(
             s, 0, 3,
             {"else", "others", "andere", "anderen", "ubrigen", "autres", "anders", "overigen",
              "overige", "resto", "demas", "elsewhere", "ailleurs", "elders", "anderswo"});
}

/// "And if you get past 80.00, ..": a value that was not understood, no fee.
bool opens_condition(const Sentence& part) {
  const auto two = std::min<std::size_t>(2, part.tokens.size());
  return word_between(part, 0, static_cast<std::uint32_t>(two),
                      {"if", "once", "when", "wenn", "sobald", "falls", "si", "lorsque", "quand",
                       "als", "zodra", "wanneer", "cuando"}) &&
         !part.has_any(R::delivery, R::kind, R::region, R::dispatch);
}

/// "40.00 more for free delivery", "noch 12.00 bis zum Gratisversand": what is still to spend.
bool is_remaining(const Sentence& part, const PolicyMark& amount) {
  if (word_between(part, amount.end, amount.end + 1, {"more", "away"})) return true;
  return word_between(part, amount.begin < 3 ? 0 : amount.begin - 3, amount.begin,
                      {"noch", "nog", "que"}) &&
         word_between(part, amount.end, amount.end + 2, {"bis", "tot", "pour", "voor"});
}

/// "Island surcharge: 9.90"
bool is_surcharge(const Sentence& s) {
  const auto amounts = std::count_if(s.marks.begin(), s.marks.end(),
                                     [](const PolicyMark& one) { return one.role == R::money; });
  return amounts == 1 && std::any_of(s.tokens.begin(), s.tokens.end(), [](const PolicyToken& one) {
           return one.word.ends_with("zuschlag") || one.word.ends_with("toeslag") ||
                  one.word == "surcharge" || one.word == "supplement";
         });
}

/// "an additional 3.00", "3.00 extra"
bool is_added(const Sentence& part, std::uint32_t at) {
  if (part.has(R::smaller)) return false;  // "otherwise add 2.25"
  // "On the islands 10.00 is added"
  const bool far =
      part.has(R::region) && word_between(part, at, at + 5, {"bij", "hinzu", "dazu", "added"});
  if (far) return true;
  if (at > 0 && part.word(at - 1) == "+") return true;
  if (at > 0 && word_between(part, at - 1, at, {"add", "plus", "zzgl"})) return true;
  if (word_between(part, at < 6 ? 0 : at - 6, at, {"add", "adds", "added"})) return true;
  return word_between(part, at < 3 ? 0 : at - 3, at + 4,
                      {"additional", "extra", "zusatzlich", "zusatzliche", "zusatzlichen",
                       "supplementaire", "supplementaires", "adicional", "adicionales"});
}

/// "If you pick it up in our shop": the way itself, no further condition.
bool is_way_chosen(const Sentence& part, std::uint32_t at) {
  return std::any_of(part.marks.begin(), part.marks.end(), [&](const PolicyMark& one) {
    const bool fetched = is_fetched(one.value);
    return one.role == R::kind && fetched && one.begin > at && one.begin <= at + 3;
  });
}

/// Why "free" may not hold for everybody; empty where it does.
std::string_view doubt_of_free(const Sentence& s, const Sentence& part) {
  static constexpr std::string_view kConditions[] = {
      "if",    "when",    "once", "wenn", "sofern", "falls",    "si",     "lorsque",
      "quand", "wanneer", "mits", "als",  "indien", "provided", "unless", "cuando"};
  bool condition = false;
  for (std::uint32_t at = 0; at < part.tokens.size(); ++at) {
    const bool opens = std::find(std::begin(kConditions), std::end(kConditions), part.word(at)) !=
                       std::end(kConditions);
    condition = condition || (opens && !is_way_chosen(part, at));
  }
  // "To another address at no extra charge": no more than usual
  const auto* free = part.first(R::free);
  const bool extra = free != nullptr &&
                     word_between(part, free->begin, free->end,
                                  {"extra", "aufpreis", "supplement", "meerprijs", "adicional"});
  const auto* kind = part.first(R::kind);
  const bool fetched = kind != nullptr && kind->value == "collection";
  if (extra && !fetched && !part.has(R::region)) return kCondition;
  // "Free delivery for teachers"
  for (std::uint32_t at = 1; at < part.tokens.size(); ++at) {
    const bool who = word_between(part, at - 1, at, {"for", "fur", "pour", "voor", "para"});
    if (who && is_unread(part, at)) return kCondition;
  }
  const bool missing = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::money && is_missing(s, one);
  });
  if (missing) return kCondition;
  const auto* from = part.first(R::from);
  const bool bound = from != nullptr && part.word(from->begin) != "from" && !part.has(R::money);
  // "From three articles on, delivery is free"
  const bool pieces =
      !s.has(R::money) && std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
        const bool time = between(s, R::span, one.end, one.end + 4);
        return one.role == R::from && !time && number_at(s.tokens, one.end).has_value();
      });
  if (condition || bound || pieces) return kCondition;
  return s.has(R::money) && s.has_any(R::over, R::or_more, R::under) &&
                 !part.has_any(R::kind, R::region)
             ? kBeyond
             : std::string_view{};
}

}  // namespace

void DeliveryRules::add_step(const Sentence& s, const Option& option, std::optional<Money> from,
                             const Money& fee) {
  if (from && from->minor == 0) from.reset();
  const std::string doubt = doubt_.empty() && strange_ && from ? std::string(kUnreadWords) : doubt_;
  steps_[key_of(option)].push_back({from, {}, fee, {{}, {}, s.text, s.byte, doubt, false}});
  if (doubt_.empty()) {
    kinds_.try_emplace(key_of(option), option.kind);
    if (!option.regions.empty()) regions_.try_emplace(key_of(option), option.regions);
  }
}

namespace {

/// "A free tote bag with orders over 80.00": something else than the delivery is free.
bool is_other_gift(const Sentence& s) {
  constexpr std::uint32_t kBefore = 1;
  constexpr std::uint32_t kBehind = 1;
  if (s.has_any(R::delivery, R::kind, R::first_delivery, R::region) || s.has(R::dispatch)) {
    return false;
  }
  return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& free) {
    if (free.role != R::free) return false;
    const auto begin = free.begin < kBefore ? 0 : free.begin - kBefore;
    const auto size = static_cast<std::uint32_t>(s.tokens.size());
    const auto end = std::min(free.end + kBehind, size);
    for (auto at = begin; at < end; ++at) {
      if (is_unread(s, at)) return true;
    }
    return std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& item) {
      return item.role == R::item && (item.begin == free.end || item.end == free.begin);
    });
  });
}

/// "3.95 unless you spend over 50": free from there.
bool is_excepted(const Sentence& part, std::uint32_t at) {
  return word_between(part, at < 7 ? 0 : at - 7, at,
                      {"unless", "except", "ausser", "sauf", "behalve", "tenzij"});
}

}  // namespace

/// Limits of one clause with the costs of the same or a neighbouring one.
void DeliveryRules::pair_up(const Sentence& s, Clause& limits, Clause& costs) {
  if (limits.limits.size() == 1 && costs.fees.size() == 1 && !costs.free) {
    const auto& limit = limits.limits.front();
    costs.free = limit.bound != Clause::Bound::under && is_excepted(limits.part, limit.at);
  }
  using Bound = Clause::Bound;
  const Option& option = costs.option.kind.empty() ? limits.option : costs.option;
  auto fees = costs.fees;
  bool free = costs.free;
  for (const auto& limit : limits.limits) {
    const bool upward = limit.bound != Bound::under && !limit.range;
    if (free && (upward || fees.empty())) {
      free = false;
      claim(s, option, "free_over", value_text(Threshold{limit.amount, limit.bound != Bound::over}),
            !upward            ? "It is free below a value, which is unusual."
            : is_other_gift(s) ? std::string(kUnreadGift)
                               : std::string{});
      continue;
    }
    if (fees.empty()) continue;
    const auto nearest =
        std::min_element(fees.begin(), fees.end(), [&](const auto& a, const auto& b) {
          const auto far = [&](const auto& one) {
            return one.at > limit.at ? one.at - limit.at : limit.at - one.at;
          };
          return far(a) < far(b);
        });
    std::optional<Money> from = limit.amount;
    if (limit.bound == Bound::over) ++from->minor;
    if (limit.bound == Bound::under) from.reset();
    add_step(s, option, from, nearest->amount);
    fees.erase(nearest);
  }
  for (const auto& fee : fees) {
    claim(s, option, "fee", value_text(fee.amount), fee.starting ? std::string(kStarting) : "");
  }
  limits.done = true;
  costs.done = true;
}

/// "We can only accept orders worth 15 or more"
void DeliveryRules::read_minimum(const Sentence& s, Clause& clause) {
  const bool said =
      clause.part.has(R::minimum_order) || (s.has(R::minimum_order) && amount_count(s) == 1);
  const auto* amount = clause.part.first(R::money);
  const bool one = clause.limits.size() + clause.fees.size() == 1;
  if (!said || !one || s.has(R::free) || amount == nullptr || !amount->money) return;
  claim(s, clause.option, "minimum_order", value_text(Threshold{*amount->money, true}));
  clause.limits.clear();
  clause.fees.clear();
}

void DeliveryRules::claim_alone(const Sentence& s, const Clause& clause) {
  const bool beyond =
      clause.free && clause.fees.empty() && !s.has(R::money) && s.has_any(R::or_more, R::over);
  if (beyond) {
    if (free_beyond_) claim(s, clause.option, "free_over", *free_beyond_);
    return;
  }
  if (clause.fees.size() == 1 && !clause.free) {
    const auto& fee = clause.fees.front();
    std::string doubt = fee.starting ? std::string(kStarting) : std::string{};
    if (s.has(R::per_item)) doubt = kPerItem;
    if (is_added(clause.part, fee.at) || is_surcharge(s)) doubt = kAdded;
    // "The 50.00 is counted after discounts"
    if (s.has_any(R::before_discount, R::after_discount) && !s.has(R::order)) return;
    if (opens_condition(clause.part)) doubt = kCondition;
    if (is_of_others(s) && (weighed_ || !line_keys_.empty())) doubt = kOthers;
    if (weighed_ && s.has(R::smaller)) doubt = kOthers;  // "Parcels over 20 kg 15.00. Others 5.00"
    claim(s, clause.option, "fee", value_text(fee.amount), doubt);
  } else if (!clause.fees.empty()) {
    claim(s, clause.option, "fee", value_text(clause.fees.front().amount), std::string(kSeveral));
  } else if (clause.free && frame_.currency &&
             (s.has(R::money) || !s.has_any(R::before_discount, R::after_discount))) {
    // "Click & collect", and below it "Free"
    const bool below = !section_.kind.empty() && !asked_ && unread_words(s) == 0;
    // "Collect it from our shop? Costs nothing", but not "costs no more"
    const bool chosen = asked_ && unread_words(s) == 0 && is_fetched(section_.kind);
    const bool about = s.has_any(R::delivery, R::kind, R::region, R::all_orders) || chosen ||
                       s.kind == PolicyLineKind::row || below ||
                       (s.kind == PolicyLineKind::item && clause.option.kind == "collection");
    if (about) {
      claim(s, clause.option, "fee", value_text(Money{0, *frame_.currency}),
            std::string(doubt_of_free(s, clause.part)));
    }
  }
}

namespace {

/// "Above that 14.00", "anything heavier: 14.00"
bool is_heavier(const Sentence& s, const PolicyMark& fee) {
  // "Free for orders of more than 150.00"
  if (s.has(R::free) || (s.has(R::order) && !s.has(R::grams))) return false;
  // "Heavier than that (usually coats): 6.20"
  if (word_between(s, 0, 2,
                   {"heavier", "schwerer", "schwerere", "schwereres", "zwaarder", "zwaardere",
                    "anything"})) {
    return true;
  }
  const bool behind =
      close_after(s, R::or_more, fee.end) ||
      word_between(s, fee.end, fee.end + 2,
                   {"above", "beyond", "daruber", "darover", "dela", "daarboven", "erboven"});
  if (behind && s.has(R::grams)) return true;
  const auto begin = fee.begin < 4 ? 0 : fee.begin - 4;
  return close_before(s, R::or_more, fee.begin, 3) != nullptr ||
         word_between(
             s, begin, fee.begin,
             {"above",      "over",  "heavier",  "beyond",    "more",    "daruber",    "schwerer",
              "plus",       "dela",  "zwaarder", "daarboven", "meer",    "schwereres", "schwerere",
              "schwereren", "lourd", "lourds",   "zwaardere", "pesados", "pesado"});
}

}  // namespace

/// "Free from 70 in France and 110 abroad": the second is a limit as well.
void DeliveryRules::carry_limits(std::vector<Clause>& clauses) {
  for (std::size_t i = 1; i < clauses.size(); ++i) {
    const Clause& before = clauses[i - 1];
    Clause& clause = clauses[i];
    const bool limited = before.free && before.limits.size() == 1 && before.fees.empty();
    const bool bare = clause.limits.empty() && clause.fees.size() == 1 && !clause.free &&
                      clause.part.has(R::region) &&
                      !clause.part.has_any(R::deduct, R::kind, R::first_delivery, R::span);
    if (!limited || !bare || clause.fees.front().amount < before.limits.front().amount) continue;
    clause.limits.push_back(
        {clause.fees.front().amount, before.limits.front().bound, clause.fees.front().at});
    clause.fees.clear();
    clause.free = true;
  }
}

void DeliveryRules::read_money(const Sentence& s, std::vector<Clause>& clauses) {
  const bool remaining = std::any_of(s.marks.begin(), s.marks.end(), [&](const PolicyMark& one) {
    return one.role == R::money && is_remaining(s, one);
  });
  if (remaining) return;
  const auto* fee = s.first(R::money);
  const bool heavier = weighed_ && fee != nullptr && is_heavier(s, *fee);
  if (s.has(R::grams) || heavier) return read_weights(s, clauses);
  for (auto& clause : clauses) weigh_money(s, clause);
  for (auto& clause : clauses) read_minimum(s, clause);
  // "Free delivery", and below it "from 45.00"
  const auto costs = [](const Clause& one) { return one.costs(); };
  const bool titled = headed_free_ && std::none_of(clauses.begin(), clauses.end(), costs);
  for (auto& clause : clauses) clause.free = clause.free || (titled && !clause.limits.empty());
  carry_limits(clauses);
  const auto amounts = std::count_if(clauses.begin(), clauses.end(), [](const Clause& one) {
    return one.limits.empty() && !one.fees.empty();
  });
  if (s.kind == PolicyLineKind::row && amounts > 1 && doubt_.empty()) doubt_ = kSeveral;
  for (auto& clause : clauses) {
    if (!clause.limits.empty() && clause.costs()) pair_up(s, clause, clause);
  }
  for (std::size_t i = 0; i < clauses.size(); ++i) {
    Clause& clause = clauses[i];
    if (clause.limits.empty() || clause.done) continue;
    const auto fits = [&](const Clause& other) {
      return !other.done && other.costs() && other.limits.empty();
    };
    std::size_t next = i + 1;
    while (next < clauses.size() && !clauses[next].costs() && clauses[next].limits.empty()) ++next;
    if (next < clauses.size() && fits(clauses[next])) {
      pair_up(s, clause, clauses[next]);
    } else if (i > 0 && fits(clauses[i - 1]) && clauses[i - 1].free) {
      pair_up(s, clause, clauses[i - 1]);
    }
  }
  const Clause::Limit* under = nullptr;
  for (const auto& clause : clauses) {
    for (const auto& limit : clause.limits) {
      if (limit.bound != Clause::Bound::under) continue;
      under = &limit;
      free_beyond_ = value_text(Threshold{limit.amount, !limit.included});
    }
    if (clause.done || !clause.costs()) continue;
    // "3.95 below 50 and free above"
    const bool rest = word_between(clause.part, 0, 5,
                                   {"else", "other", "others", "andere", "anderen", "anderes",
                                    "ubrigen", "autres", "reste", "overige", "demas", "resto"});
    const bool beyond =
        under != nullptr && clause.free && (rest || clause.part.has_any(R::over, R::or_more));
    if (beyond) {
      claim(s, clause.option, "free_over", value_text(Threshold{under->amount, !under->included}));
    } else {
      claim_alone(s, clause);
    }
  }
}

void DeliveryRules::read_weights(const Sentence& s, const std::vector<Clause>& clauses) {
  const PolicyMark* weight = nullptr;
  const PolicyMark* fee = nullptr;
  bool over = false;
  for (const auto& mark : s.marks) {
    if (mark.role == R::grams) {
      weight = &mark;
      const auto* before = close_before(s, R::over, mark.begin, 2);
      over = before != nullptr && before->end <= mark.begin;
    }
    if (mark.role == R::money && mark.money) fee = &mark;
    // "up to 2 kg 4.50, above that 7.50"
    const bool beyond = weight == nullptr && fee == &mark && weighed_ && is_heavier(s, mark);
    if (beyond) over = true;
    if ((weight == nullptr && !beyond) || fee == nullptr) continue;
    const Option option = clauses.empty() ? section_ : clauses.back().option;
    Step step{{}, {}, *fee->money, {{}, {}, s.text, s.byte, doubt_, false}};
    if (!over) step.grams = weight->number;
    weighed_ = true;
    weights_[key_of(option)].push_back(std::move(step));
    kinds_.try_emplace(key_of(option), option.kind);
    if (!option.regions.empty()) regions_.try_emplace(key_of(option), option.regions);
    weight = nullptr;
    fee = nullptr;
  }
}

}  // namespace rangebook
