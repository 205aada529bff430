// What is worked out of delivery when the whole policy has been read: steps of fees, and what
// follows from the names and places of the options.
#include <algorithm>
#include <utility>

#include "importers/policy_clause.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

constexpr std::string_view kIslands = "Crown dependencies are abroad for some shops only.";
constexpr std::string_view kSmallOrders =
    "It holds for small orders; what larger ones pay was not found.";

}  // namespace

void DeliveryRules::finish_steps_of(const std::string& key, std::vector<Step> steps) {
  const std::string prefix = "delivery." + key + ".";
  const auto value = [](const Step& step) { return step.from ? step.from->minor : 0; };
  std::stable_sort(steps.begin(), steps.end(),
                   [&](const Step& a, const Step& b) { return value(a) < value(b); });
  const auto same = [&](const Step& a, const Step& b) {
    return value(a) == value(b) && a.fee == b.fee;
  };
  steps.erase(std::unique(steps.begin(), steps.end(), same), steps.end());
  PolicyClaim origin = steps.front().origin;
  if (steps.size() == 1 && !steps.front().from) {
    origin.field = prefix + "fee";
    origin.text = value_text(steps.front().fee);
    if (!claims_.speaks_of(prefix + "free_over") && origin.doubt.empty()) {
      origin.doubt = kSmallOrders;
    }
    return claims_.add(std::move(origin));
  }
  std::vector<ValueStep> list;
  const auto* base = claims_.stated(prefix + "fee");
  if (steps.front().from && base != nullptr) {
    const auto fee = rangebook::read_money(base->text, std::nullopt);
    if (fee) list.push_back(ValueStep{Money{0, fee->currency}, *fee});
  }
  for (const auto& step : steps) {
    list.push_back(ValueStep{step.from.value_or(Money{0, step.fee.currency}), step.fee});
  }
  // "Up to 25: 6.99, from 25: 6.99": one step
  list.erase(std::unique(list.begin(), list.end(),
                         [](const ValueStep& a, const ValueStep& b) { return a.fee == b.fee; }),
             list.end());
  const std::string text = value_text(list);
  const bool whole = list.front().from.minor == 0 &&
                     read_value<std::vector<ValueStep>>(text, std::nullopt).has_value();
  if (!whole) origin.doubt = "The steps by order value are not complete.";
  if (whole) claims_.remove(prefix + "fee");
  origin.field = prefix + "fee_by_value";
  origin.text = text;
  if (read_value<std::vector<ValueStep>>(text, std::nullopt)) claims_.add(std::move(origin));
}

void DeliveryRules::finish_weights() {
  for (auto& [key, steps] : weights_) {
    std::stable_sort(steps.begin(), steps.end(), [](const Step& a, const Step& b) {
      return a.grams.value_or(kMaxTermsCount) < b.grams.value_or(kMaxTermsCount);
    });
    std::vector<WeightStep> list;
    for (const auto& step : steps) list.push_back({step.grams, step.fee});
    PolicyClaim origin = steps.front().origin;
    origin.field = "delivery." + key + ".fee_by_weight";
    origin.text = value_text(list);
    if (list.size() < 2 || !list.front().grams)
      origin.doubt = "The steps by weight are not complete.";
    if (read_value<std::vector<WeightStep>>(origin.text, std::nullopt)) {
      claims_.add(std::move(origin));
    }
  }
}

/// What follows from an option's name and places, said once for each option that has a figure.
void DeliveryRules::finish_option(const std::string& key) {
  const std::string prefix = "delivery." + key + ".";
  const auto all = claims_.all();
  const auto from = std::find_if(all.begin(), all.end(), [&](const PolicyClaim& one) {
    return one.field.starts_with(prefix) && one.doubt.empty();
  });
  if (from == all.end()) return;
  const auto add = [&](std::string_view name, std::string text, std::string doubt = {}) {
    claims_.add({prefix + std::string(name), std::move(text), from->sentence, from->byte,
                 std::move(doubt), false});
  };
  const std::string& kind = kinds_[key];
  if (is_fast(kind)) add("express", "yes");
  if (is_fetched(kind)) add("collection", "yes");
  const auto places = regions_.find(key);
  if (places == regions_.end() || kind == "collection") return;
  auto regions = places->second;
  // "We deliver to Germany and Austria. It costs 5.00, to Austria 9.00"
  const bool home = std::any_of(regions.begin(), regions.end(),
                                [&](const std::string& one) { return is_home(one, frame_); });
  if (home && regions.size() > 1) {
    std::erase_if(regions, [&](const std::string& one) {
      const std::string own = key_of({kinds_[key], {one}, false});
      return own != key && claims_.stated("delivery." + own + ".fee") != nullptr;
    });
  }
  std::sort(regions.begin(), regions.end());
  add("regions", value_text(regions),
      std::string(vague_.contains(key) ? kUnreadWords : std::string_view{}));
  const bool abroad = std::none_of(regions.begin(), regions.end(),
                                   [&](const std::string& one) { return is_home(one, frame_); });
  // neither abroad nor at home for every shop
  const bool islands = std::all_of(regions.begin(), regions.end(), [](const std::string& one) {
    return one == "channel-islands" || one == "IM";
  });
  const bool crown = islands && frame_.country == "GB";
  if (abroad && !frame_.country.empty()) {
    add("international", "yes", std::string(crown ? kIslands : std::string_view{}));
  }
}

/// "Belgium: 6.90, Spain: 9.90", then "4-6 days in Belgium and in Spain": the time of both.
void DeliveryRules::finish_shared() {
  for (const auto& [key, places] : shared_) {
    for (const std::string_view name : {"transit", "transit_from"}) {
      const auto* stated = claims_.stated("delivery." + key + "." + std::string(name));
      if (stated == nullptr) continue;
      for (const auto& place : places) {
        const std::string other = key_of({kinds_[key], {place}, false});
        const std::string prefix = "delivery." + other + ".";
        const bool own = other != key && claims_.stated(prefix + "fee") != nullptr &&
                         !claims_.speaks_of(prefix + std::string(name));
        if (!own) continue;
        PolicyClaim copy = *stated;
        copy.field = prefix + std::string(name);
        claims_.add(std::move(copy));
        stated = claims_.stated("delivery." + key + "." + std::string(name));
      }
    }
  }
}

void DeliveryRules::finish_options() {
  auto keys = claims_.option_keys();
  if (keys.empty() && !for_all_.empty()) keys.emplace_back("standard");
  const bool limited = std::any_of(keys.begin(), keys.end(), [&](const std::string& key) {
    return claims_.stated("delivery." + key + ".free_over") != nullptr;
  });
  for (const auto& key : keys) {
    const std::string prefix = "delivery." + key + ".";
    const std::string& kind = kinds_[key];
    const bool fetched = is_fetched(kind);
    const bool threshold =
        claims_.stated(prefix + "free_over") != nullptr || (!limited && key == "standard");
    for (auto fact : for_all_) {
      const bool time = fact.field == "handling";
      if (fact.field == "per_parcel") {
        const auto* fee = claims_.stated(prefix + "fee");
        if (fetched || fee == nullptr || claims_.speaks_of(prefix + "per_parcel")) continue;
        fact.field.insert(0, prefix);
        claims_.add(std::move(fact));
        continue;
      }
      const bool usual = claims_.stated("delivery.standard.free_over") != nullptr;
      if (fact.field == "threshold_kept" && usual && key != "standard") continue;
      if (time ? fetched || claims_.speaks_of(prefix + "handling") : !threshold) continue;
      fact.field.insert(0, prefix);
      claims_.add(std::move(fact));
    }
    finish_option(key);
  }
}

void DeliveryRules::finish() {
  for (const auto& [key, steps] : steps_) finish_steps_of(key, steps);
  finish_weights();
  finish_shared();
  finish_options();
  finish_places();
}

}  // namespace rangebook
