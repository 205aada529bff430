// Terms over time: what was observed on one day, and what holds on a given day.
#pragma once

#include <optional>
#include <vector>

#include "schema/capture.h"
#include "schema/change.h"
#include "schema/day.h"
#include "schema/terms.h"

namespace rangebook {

/// The terms of a shop as of a day. Delivery and returns often stand on two pages that are saved on
/// different days, so each part has its own day.
struct TermsInForce {
  Shop shop;
  Terms terms;
  std::optional<Day> delivery_on;  ///< when the delivery terms were observed; nothing: never
  std::optional<Day> returns_on;   ///< likewise
};

/// One version of a shop's terms beside the one before.
struct TermsStep {
  Day on{};
  std::vector<Change> changes;  ///< against what was in force before; none for the first version
};

}  // namespace rangebook
