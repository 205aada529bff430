// One statement of a sentence about delivery, the option it speaks of, and its amounts.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "importers/policy_rules.h"

namespace rangebook {

struct DeliveryRules::Clause {
  enum class Bound : std::uint8_t { over, from, under };
  /// An order value. A range ("30 to 59.99") has an upper end.
  struct Limit {
    Money amount;
    Bound bound = Bound::from;
    std::uint32_t at = 0;
    bool range = false;
    bool included = false;  ///< of an upper bound: the value itself is still below it
  };
  struct Fee {
    Money amount;
    std::uint32_t at = 0;
    bool starting = false;  ///< "from 3.95"
  };
  PolicySentence part = {};
  Option option = {};
  std::vector<Limit> limits = {};
  std::vector<Fee> fees = {};
  bool free = false;
  bool in_brackets = false;
  bool done = false;

  bool costs() const { return free || !fees.empty(); }
};

/// An amount, "free" or a time.
inline bool has_fact(const PolicySentence& s) {
  return s.has_any(PolicyRole::money, PolicyRole::free, PolicyRole::span);
}

/// A way that ends where the parcel is fetched.
inline bool is_fetched(std::string_view kind) {
  return kind == "collection" || kind == "pickup-point";
}

inline bool is_fast(std::string_view kind) {
  return kind == "express" || kind == "next-day" || kind == "same-day";
}

/// A day at most.
inline bool is_soon(const PolicyMark* time) {
  return time != nullptr && time->span.max.value_or(9) <= 1;
}

/// "sent the same day": the day of dispatch, not a way of delivery.
bool is_of_dispatch(const PolicySentence& part, const PolicyMark& kind);
/// "Parcel shop: 3.99. Delivery time 3-5 days": all of the line is said of one way.
bool has_way_label(const PolicySentence& s);

}  // namespace rangebook
