// Fields of one delivery option against each other, and against the usual option.
#include "importers/policy_plausible.h"

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "schema/terms_fields.h"

namespace rangebook {
namespace {

constexpr std::string_view kName = "The name of this delivery and its time do not go together.";
constexpr std::string_view kBelowFee = "It would be free from less than the fee.";
constexpr std::string_view kSlower = "It would be slower than the usual delivery.";
constexpr std::string_view kDearer = "Fetching it would cost more than having it delivered.";
constexpr std::string_view kNoPrice = "A delivery of this name has no price in the text.";
constexpr std::string_view kCheaper = "It would be faster and cheaper than the usual delivery.";
constexpr std::string_view kAbroad = "It would cost less abroad than at home.";
constexpr std::string_view kMixed = "The sentence says two things of this delivery.";
constexpr std::string_view kUsual = "It may be said of the usual delivery.";
constexpr std::string_view kSteps = "The steps do not fit together.";
constexpr int kNextDayLimit = 3;

class Check {
 public:
  explicit Check(TermsReading& reading) : reading_(reading) {}

  void run() {
    std::vector<DeliveryOption> options = reading_.terms.delivery;
    const auto* usual = find_option(reading_.terms, "standard");
    const DeliveryOption standard = usual == nullptr ? DeliveryOption{} : *usual;
    for (const auto& option : options) {
      check_mixed(option);
      check_name(option);
      check_price(option);
      check_steps(option);
      check_fee(option);
      check_against(option, standard);
      check_threshold(option, standard);
    }
    std::stable_sort(
        reading_.doubts.begin(), reading_.doubts.end(),
        [](const TermsDoubt& a, const TermsDoubt& b) { return a.evidence.byte < b.evidence.byte; });
  }

 private:
  void doubt(const std::string& field, std::string_view why) {
    const auto text = field_text(reading_.terms, field);
    const auto found = reading_.terms.evidence.find(field);
    if (!text || found == reading_.terms.evidence.end()) return;
    TermsDoubt one{field, *text, found->second};
    one.evidence.confidence = TermsConfidence::doubtful;
    one.evidence.doubt = why;
    if (set_field(reading_.terms, field, {})) return;
    reading_.terms.evidence.erase(field);
    reading_.doubts.push_back(std::move(one));
  }

  void doubt_all(const DeliveryOption& option, std::string_view why) {
    const std::string prefix = "delivery." + option.key + ".";
    for (const auto& value : stated_values(reading_.terms)) {
      if (value.field.starts_with(prefix)) doubt(value.field, why);
    }
  }

  void check_name(const DeliveryOption& option) {
    const bool soon = option.key.starts_with("next-day") || option.key.starts_with("same-day");
    if (soon && option.transit && option.transit->max.value_or(0) >= kNextDayLimit) {
      doubt_all(option, kName);
    }
  }

  /// A sentence whose fee contradicts another one may give its time to the wrong way as well.
  void check_mixed(const DeliveryOption& option) {
    if (option.key.starts_with("standard")) return;  // a row of a table
    const std::string prefix = "delivery." + option.key + ".";
    const std::string transit = prefix + "transit";
    const auto found = reading_.terms.evidence.find(transit);
    if (found == reading_.terms.evidence.end()) return;
    const bool mixed =
        std::any_of(reading_.doubts.begin(), reading_.doubts.end(), [&](const TermsDoubt& one) {
          return one.field == prefix + "fee" && !one.evidence.contradicts.empty() &&
                 one.evidence.contradicts == one.evidence.sentence &&
                 one.evidence.sentence == found->second.sentence;
        });
    if (mixed) doubt(transit, kMixed);
  }

  /// "We cannot deliver the next day to ..", "we use express post": words, no way that is offered.
  void check_price(const DeliveryOption& option) {
    static constexpr std::string_view kFast[] = {"express",   "next-day", "same-day", "evening",
                                                 "named-day", "saturday", "weekend"};
    const bool fast = std::any_of(std::begin(kFast), std::end(kFast), [&](std::string_view kind) {
      return option.key.starts_with(kind);
    });
    if (!fast || option.fee || option.free_over || option.fee_by_value || option.fee_by_weight) {
      return;
    }
    const std::string fee = "delivery." + option.key + ".fee";
    const bool asked = std::any_of(reading_.doubts.begin(), reading_.doubts.end(),
                                   [&](const auto& one) { return one.field.starts_with(fee); });
    if (!asked) doubt_all(option, kNoPrice);
  }

  /// "Express", "9.95", and below them "free from 50.00": rather of the usual delivery.
  void check_threshold(const DeliveryOption& option, const DeliveryOption& standard) {
    const bool usual = option.key.starts_with("standard") || option.key.starts_with("economy") ||
                       option.key == "collection" || option.key == "pickup-point";
    const bool paid = standard.fee && standard.fee->minor > 0;
    if (usual || !option.free_over || standard.free_over || standard.fee_by_value || !paid) return;
    const std::string prefix = "delivery." + option.key + ".";
    const auto limit = reading_.terms.evidence.find(prefix + "free_over");
    const auto fee = reading_.terms.evidence.find(prefix + "fee");
    const auto end = reading_.terms.evidence.end();
    if (limit == end) return;
    const bool together = fee != end && fee->second.sentence == limit->second.sentence;
    if (!together) doubt(prefix + "free_over", kUsual);
  }

  /// An order value is no fee; heavier parcels do not pay less.
  void check_steps(const DeliveryOption& option) {
    const auto mixed = [](const ValueStep& a, const ValueStep& b) {
      return a.fee.minor == b.from.minor || a.fee.minor == 0;
    };
    const auto cheaper = [](const WeightStep& a, const WeightStep& b) {
      return a.fee.currency == b.fee.currency && b.fee.minor < a.fee.minor;
    };
    const auto broken = [](const auto& steps, const auto& wrong) {
      return steps && std::adjacent_find(steps->begin(), steps->end(), wrong) != steps->end();
    };
    const std::string prefix = "delivery." + option.key + ".";
    if (broken(option.fee_by_value, mixed)) doubt(prefix + "fee_by_value", kSteps);
    if (broken(option.fee_by_weight, cheaper)) doubt(prefix + "fee_by_weight", kSteps);
  }

  void check_fee(const DeliveryOption& option) {
    if (!option.fee || !option.free_over) return;
    const Money& from = option.free_over->amount;
    if (from.currency != option.fee->currency || from.minor > option.fee->minor) return;
    doubt("delivery." + option.key + ".fee", kBelowFee);
    doubt("delivery." + option.key + ".free_over", kBelowFee);
  }

  void check_against(const DeliveryOption& option, const DeliveryOption& standard) {
    const bool fast = option.key == "express" || option.key == "next-day";
    const bool times = option.transit && standard.transit && option.transit->min &&
                       standard.transit->max && option.transit->unit == standard.transit->unit;
    if (fast && times && *option.transit->min > *standard.transit->max) {
      doubt("delivery." + option.key + ".transit", kSlower);
    }
    const bool fees = option.fee && standard.fee && option.fee->currency == standard.fee->currency;
    if (!fees) return;
    const std::string fee = "delivery." + option.key + ".fee";
    const bool fetched = option.key == "collection" || option.key == "pickup-point";
    if (fetched && option.fee->minor > standard.fee->minor) doubt(fee, kDearer);
    if (fast && option.fee->minor < standard.fee->minor) doubt(fee, kCheaper);
    check_abroad(option, standard);
  }

  /// Farther is neither cheaper nor sooner free.
  void check_abroad(const DeliveryOption& option, const DeliveryOption& standard) {
    if (!option.key.starts_with("standard-") || !option.international.value_or(false)) return;
    const std::string prefix = "delivery." + option.key + ".";
    if (option.fee->minor < standard.fee->minor) doubt(prefix + "fee", kAbroad);
    const bool limits = option.free_over && standard.free_over &&
                        option.free_over->amount.currency == standard.free_over->amount.currency;
    if (limits && option.free_over->amount.minor < standard.free_over->amount.minor) {
      doubt(prefix + "free_over", kAbroad);
    }
  }

  TermsReading& reading_;
};

}  // namespace

void doubt_implausible(TermsReading& reading) { Check(reading).run(); }

}  // namespace rangebook
