// Names of the enumerations of terms, days of a season, and equality by meaning.
#include "schema/terms.h"

#include <fmt/format.h>

#include <algorithm>

#include "schema/terms_names.h"

namespace rangebook {

std::string_view to_string(DayUnit unit) { return name_of(kDayUnits, unit); }
std::string_view to_string(CountedFrom from) { return name_of(kCountedFroms, from); }
std::string_view to_string(ThresholdBasis basis) { return name_of(kThresholdBases, basis); }
std::string_view to_string(ReturnMethod method) { return name_of(kReturnMethodNames, method); }
std::string_view to_string(Payer payer) { return name_of(kPayers, payer); }
std::string_view to_string(RefundForm form) { return name_of(kRefundForms, form); }
std::string_view to_string(ReturnItem item) { return name_of(kReturnItems, item); }
std::string_view to_string(ItemRule rule) { return name_of(kItemRules, rule); }
std::string_view to_string(ReturnCondition condition) {
  return name_of(kReturnConditions, condition);
}
std::string_view to_string(TermsConfidence confidence) {
  return name_of(kTermsConfidences, confidence);
}
std::optional<TermsConfidence> parse_terms_confidence(std::string_view name) {
  return value_of(kTermsConfidences, name);
}

bool is_possible(const SeasonDay& day) {
  const int year = day.year.value_or(2000);  // a leap year: an open year may be one
  return date::year_month_day{date::year{year}, date::month{day.month}, date::day{day.day}}.ok() &&
         year > 0 && year <= 9999;
}

std::string to_string(const SeasonDay& day) {
  const auto month = kMonths.at(day.month - 1);
  return day.year ? fmt::format("{} {} {}", day.day, month, *day.year)
                  : fmt::format("{} {}", day.day, month);
}

namespace {

template <typename T, typename Key>
bool same_parts(std::vector<T> a, std::vector<T> b, Key key) {
  const auto by_key = [&](const T& x, const T& y) { return x.*key < y.*key; };
  std::stable_sort(a.begin(), a.end(), by_key);
  std::stable_sort(b.begin(), b.end(), by_key);
  return a == b;
}

}  // namespace

bool operator==(const Terms& a, const Terms& b) {
  return a.shop == b.shop && a.observed == b.observed &&
         same_parts(a.delivery, b.delivery, &DeliveryOption::key) &&
         same_parts(a.returns, b.returns, &ReturnPolicy::region);
}

const ReturnPolicy* find_policy(const Terms& terms, std::string_view region) {
  const auto at = std::find_if(terms.returns.begin(), terms.returns.end(),
                               [&](const ReturnPolicy& one) { return one.region == region; });
  return at == terms.returns.end() ? nullptr : &*at;
}

const DeliveryOption* find_option(const Terms& terms, std::string_view key) {
  const auto at = std::find_if(terms.delivery.begin(), terms.delivery.end(),
                               [&](const DeliveryOption& one) { return one.key == key; });
  return at == terms.delivery.end() ? nullptr : &*at;
}

}  // namespace rangebook
