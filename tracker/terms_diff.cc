// Terms, field by field.
#include "tracker/terms_diff.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "schema/terms_fields.h"
#include "schema/terms_values.h"
#include "tracker/change_order.h"

namespace rangebook {
namespace {

using Direction = TermsDirection;

template <typename T>
Direction lower_is_better(const T& before, const T& after) {
  if (before == after) return Direction::neutral;
  return after < before ? Direction::better : Direction::worse;
}

/// Reads both texts as T and asks `judge`; neutral where one is no such value.
template <typename T, typename Judge>
Direction judged(std::string_view before, std::string_view after, Judge judge) {
  const auto then = read_value<T>(before, {});
  const auto now = read_value<T>(after, {});
  return then && now ? judge(*then, *now) : Direction::neutral;
}

Direction amounts(const Money& before, const Money& after) {
  if (before.currency != after.currency) return Direction::neutral;
  return lower_is_better(before.minor, after.minor);
}

/// Of two limits of equal amount the one that includes it is lower.
Direction limits(const Threshold& before, const Threshold& after) {
  if (before.amount.currency != after.amount.currency) return Direction::neutral;
  return lower_is_better(std::pair(before.amount.minor, !before.inclusive),
                         std::pair(after.amount.minor, !after.inclusive));
}

Direction flags(bool good, bool before, bool after) {
  if (before == after) return Direction::neutral;
  return after == good ? Direction::better : Direction::worse;
}

/// The fewest and the most calendar days a count of units can be.
std::pair<int, int> bounds(int count, DayUnit unit) {
  constexpr int kShortMonth = 28;
  constexpr int kLongMonth = 31;
  constexpr int kWorkWeek = 5;
  constexpr int kWeek = 7;
  switch (unit) {
    case DayUnit::days:
      break;
    case DayUnit::months:
      return {count * kShortMonth, count * kLongMonth};
    case DayUnit::working_days:
      return {count * kWeek / kWorkWeek, count * kWeek / kWorkWeek + kWeek};
  }
  return {count, count};
}

/// Shorter or longer for certain, whatever the calendar; otherwise neutral.
Direction longer_is_better(std::pair<int, int> before, std::pair<int, int> after) {
  if (after.first > before.second) return Direction::better;
  if (after.second < before.first) return Direction::worse;
  return Direction::neutral;
}

Direction flipped(Direction direction) {
  if (direction == Direction::better) return Direction::worse;
  return direction == Direction::worse ? Direction::better : Direction::neutral;
}

Direction counts(int before, DayUnit unit_before, int after, DayUnit unit_after) {
  if (unit_before == unit_after) return flipped(lower_is_better(before, after));
  return longer_is_better(bounds(before, unit_before), bounds(after, unit_after));
}

/// Later events give more time.
Direction events(const std::optional<CountedFrom>& before,
                 const std::optional<CountedFrom>& after) {
  if (!before || !after) return Direction::neutral;
  return flipped(lower_is_better(*before, *after));
}

Direction windows(const ReturnWindow& before, const ReturnWindow& after) {
  if (!before.count || !after.count) {
    return flags(true, !before.count.has_value(), !after.count.has_value());
  }
  const auto count = counts(*before.count, before.unit, *after.count, after.unit);
  const auto event = events(before.from, after.from);
  if (before.from.has_value() != after.from.has_value()) return Direction::neutral;
  if (count == Direction::neutral) {
    return before.unit == after.unit && *before.count == *after.count ? event : count;
  }
  return event == Direction::neutral || event == count ? count : Direction::neutral;
}

Direction spans(const DaySpan& before, const DaySpan& after) {
  if (!before.max || !after.max) return Direction::neutral;
  return flipped(counts(*before.max, before.unit, *after.max, after.unit));
}

/// More is better; a swap is neutral.
template <typename T>
Direction sets(std::vector<T> before, std::vector<T> after) {
  std::sort(before.begin(), before.end());
  std::sort(after.begin(), after.end());
  const bool more = std::includes(after.begin(), after.end(), before.begin(), before.end());
  const bool less = std::includes(before.begin(), before.end(), after.begin(), after.end());
  if (more == less) return Direction::neutral;
  return more ? Direction::better : Direction::worse;
}

/// How lenient a rule is; two rules of one rank cannot be compared.
int leniency(ItemRule rule) {
  switch (rule) {
    case ItemRule::returnable:
      return 4;
    case ItemRule::unopened_only:
      return 3;
    case ItemRule::exchange_or_credit:
      return 2;
    case ItemRule::exchange_only:
    case ItemRule::credit_only:
      return 1;
    case ItemRule::not_returnable:
      break;
  }
  return 0;
}

using Judge = Direction (*)(std::string_view, std::string_view);

Direction judge_money(std::string_view a, std::string_view b) {
  return judged<Money>(a, b, amounts);
}
Direction judge_limit(std::string_view a, std::string_view b) {
  return judged<Threshold>(a, b, limits);
}
Direction judge_speed(std::string_view a, std::string_view b) {
  return judged<DaySpan>(a, b, spans);
}
Direction judge_time_left(std::string_view a, std::string_view b) {
  return flipped(judged<DaySpan>(a, b, spans));
}
Direction judge_window(std::string_view a, std::string_view b) {
  return judged<ReturnWindow>(a, b, windows);
}
Direction judge_yes(std::string_view a, std::string_view b) {
  return judged<bool>(a, b, [](bool x, bool y) { return flags(true, x, y); });
}
Direction judge_no(std::string_view a, std::string_view b) {
  return judged<bool>(a, b, [](bool x, bool y) { return flags(false, x, y); });
}
Direction judge_payer(std::string_view a, std::string_view b) {
  return judged<Payer>(a, b, lower_is_better<Payer>);
}
Direction judge_basis(std::string_view a, std::string_view b) {
  return judged<ThresholdBasis>(a, b, lower_is_better<ThresholdBasis>);
}
Direction judge_places(std::string_view a, std::string_view b) {
  return judged<std::vector<std::string>>(a, b, sets<std::string>);
}
Direction judge_gaps(std::string_view a, std::string_view b) { return flipped(judge_places(a, b)); }
Direction judge_refund(std::string_view a, std::string_view b) {
  return judged<std::vector<RefundForm>>(a, b, sets<RefundForm>);
}
Direction judge_item(std::string_view a, std::string_view b) {
  return judged<ItemRule>(a, b, [](ItemRule x, ItemRule y) {
    return flipped(lower_is_better(leniency(x), leniency(y)));
  });
}
Direction judge_share(std::string_view a, std::string_view b) {
  const auto then = read_share(a);
  const auto now = read_share(b);
  return then && now ? lower_is_better(*then, *now) : Direction::neutral;
}

/// By the last part of a field's name. Fields that are not here are neither better nor worse.
const std::map<std::string_view, Judge>& judges() {
  static const std::map<std::string_view, Judge> table{
      {"fee", judge_money},
      {"restocking_fee", judge_money},
      {"restocking_share", judge_share},
      {"free_over", judge_limit},
      {"minimum_order", judge_limit},
      {"threshold_basis", judge_basis},
      {"threshold_kept", judge_no},
      {"per_parcel", judge_no},
      {"handling", judge_speed},
      {"transit", judge_speed},
      {"refund_within", judge_speed},
      {"send_back_within", judge_time_left},
      {"window", judge_window},
      {"regions", judge_places},
      {"not_regions", judge_gaps},
      {"refund", judge_refund},
      {"paid_by", judge_payer},
      {"accepted", judge_yes},
      {"exchange", judge_yes},
      {"delivery_refunded", judge_yes},
      {"store", judge_yes},
      {"post", judge_yes},
      {"courier", judge_yes},
      {"drop-off", judge_yes},
  };
  return table;
}

bool has_part(std::string_view field, std::string_view part) {
  return field.find(part) != std::string_view::npos;
}

/// One side of a change; nothing where the field is not stated.
std::optional<TermsFact> fact_of(const Terms& terms, const std::string& field,
                                 Direction direction) {
  auto value = field_text(terms, field);
  if (!value) return std::nullopt;
  const auto evidence = terms.evidence.find(field);
  return TermsFact{field, std::move(*value),
                   evidence == terms.evidence.end() ? "" : evidence->second.sentence, direction};
}

std::optional<Sighting> sighting_of(const TermsInForce& side, const std::string& field,
                                    const CaptureInfo& capture) {
  Sighting seen;
  seen.capture = capture.id;
  seen.season = capture.season;
  seen.on = (is_delivery_field(field) ? side.delivery_on : side.returns_on).value_or(capture.on);
  const auto evidence = side.terms.evidence.find(field);
  if (evidence != side.terms.evidence.end()) seen.document = evidence->second.document;
  return seen;
}

/// Fields of both sides, each once, in the order in which terms are written.
std::vector<std::string> fields_of(const Terms& before, const Terms& after) {
  std::vector<std::string> fields;
  for (const Terms* side : {&after, &before}) {
    for (const TermsValue& value : stated_values(*side)) {
      if (std::find(fields.begin(), fields.end(), value.field) == fields.end()) {
        fields.push_back(value.field);
      }
    }
  }
  return fields;
}

}  // namespace

TermsDirection terms_direction(std::string_view field, std::string_view before,
                               std::string_view after) {
  if (before == after) return Direction::neutral;
  if (has_part(field, ".items.")) return judge_item(before, after);
  if (has_part(field, ".needs.")) return judge_no(before, after);
  const auto dot = field.rfind('.');
  const auto found = judges().find(dot == field.npos ? field : field.substr(dot + 1));
  return found == judges().end() ? Direction::neutral : found->second(before, after);
}

std::vector<Change> diff_terms(const TermsInForce& before, const TermsInForce& after,
                               const CaptureInfo& from, const CaptureInfo& to) {
  std::vector<Change> changes;
  for (const std::string& field : fields_of(before.terms, after.terms)) {
    const bool known = is_delivery_field(field) ? before.delivery_on && after.delivery_on
                                                : before.returns_on && after.returns_on;
    if (!known) continue;
    const auto then = field_text(before.terms, field);
    const auto now = field_text(after.terms, field);
    if (then == now) continue;
    const auto direction = then && now ? terms_direction(field, *then, *now) : Direction::neutral;
    Change change;
    change.kind = ChangeKind::terms_changed;
    change.category = kTermsCategory;
    if (auto fact = fact_of(before.terms, field, direction)) change.before = std::move(*fact);
    if (auto fact = fact_of(after.terms, field, direction)) change.after = std::move(*fact);
    change.evidence = {sighting_of(before, field, from), sighting_of(after, field, to), {}};
    changes.push_back(std::move(change));
  }
  return changes;
}

void add_terms_changes(const TermsInForce& before, const TermsInForce& after, ChangeSet& set) {
  auto changes = diff_terms(before, after, set.from, set.to);
  if (changes.empty()) return;
  set.counts[static_cast<std::size_t>(ChangeKind::terms_changed)] +=
      static_cast<std::uint32_t>(changes.size());
  std::move(changes.begin(), changes.end(), std::back_inserter(set.changes));
  sort_changes(set.changes);
}

}  // namespace rangebook
