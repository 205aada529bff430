// Terms: what a shop asks for delivery and how it takes things back, as observed on one day.
//
// Every field is optional: nothing means "the shop does not say", which differs from free, none or
// no. Where a field came from stands beside the values, by field name (`terms_fields.h`), so that
// two Terms are equal when they mean the same, whoever read them from whichever sentence.
#pragma once

#include <compare>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/day.h"
#include "schema/money.h"

namespace rangebook {

/// Weeks are kept as days; a month is a calendar month, which has no fixed number of days.
enum class DayUnit : std::uint8_t { days, working_days, months };
std::string_view to_string(DayUnit unit);  ///< `working days`

/// A time the shop names: `3-5 working days`, `up to 2 days`, `from 10 days`. One bound is always
/// there.
struct DaySpan {
  std::optional<int> min;
  std::optional<int> max;
  DayUnit unit = DayUnit::days;

  auto operator<=>(const DaySpan&) const = default;
};

/// Which day counts as day 0.
enum class CountedFrom : std::uint8_t { purchase, dispatch, delivery };
std::string_view to_string(CountedFrom from);  ///< `delivery`

/// How long a thing may be sent back. `count` is nothing where the shop sets no limit.
struct ReturnWindow {
  std::optional<int> count;
  DayUnit unit = DayUnit::days;
  std::optional<CountedFrom> from;

  auto operator<=>(const ReturnWindow&) const = default;
};

/// A day of some year: shops print "until 31 January" without the year.
struct SeasonDay {
  std::optional<int> year;
  unsigned month = 1;  ///< 1 to 12
  unsigned day = 1;  ///< possible in that month; 29 February only where the year is open or has it

  auto operator<=>(const SeasonDay&) const = default;
};
bool is_possible(const SeasonDay& day);
std::string to_string(const SeasonDay& day);  ///< `31 Jan 2027`, `31 Jan`

/// What is bought from `from` to `to` (both included; either may be open) can go back up to `until`
/// (included), or for `days` days instead of the usual window. One of the two is there.
struct SeasonalWindow {
  std::optional<SeasonDay> from;
  std::optional<SeasonDay> to;
  std::optional<SeasonDay> until;
  std::optional<int> days;

  auto operator<=>(const SeasonalWindow&) const = default;
};

/// An order value. `inclusive`: an order of exactly this value counts ("50 or more"); not: "over
/// 50".
struct Threshold {
  Money amount;
  bool inclusive = true;

  auto operator<=>(const Threshold&) const = default;
};

/// Orders from this value (included) on pay this fee, until the next step.
struct ValueStep {
  Money from;
  Money fee;

  auto operator<=>(const ValueStep&) const = default;
};

/// Parcels up to this weight (included) pay this fee; the last step may have no limit.
struct WeightStep {
  std::optional<int> grams;
  Money fee;

  auto operator<=>(const WeightStep&) const = default;
};

/// Is the order value taken before or after discount codes?
enum class ThresholdBasis : std::uint8_t { before_discount, after_discount };
std::string_view to_string(ThresholdBasis basis);  ///< `before discount`

/// One way to get an order.
struct DeliveryOption {
  std::string key;  ///< in field names: `standard`, `next-day`; lower case, digits, `-`
  std::optional<std::string> name;                      ///< as the shop calls it
  std::optional<std::vector<std::string>> regions;      ///< ISO 3166 codes, or words; sorted
  std::optional<std::vector<std::string>> not_regions;  ///< places it does not go to; sorted
  std::optional<Money> fee;                             ///< 0: free
  std::optional<Threshold> free_over;  ///< order value from which the fee falls away
  std::optional<ThresholdBasis> threshold_basis;
  std::optional<bool> threshold_kept;  ///< only what is kept counts: returns can bring the fee back
  std::optional<Threshold> minimum_order;                ///< below it the option cannot be had
  std::optional<std::vector<ValueStep>> fee_by_value;    ///< by order value, rising
  std::optional<std::vector<WeightStep>> fee_by_weight;  ///< by weight, rising
  std::optional<DaySpan> handling;                       ///< order to dispatch
  /// Dispatch to door. Where the shop names one time without saying from when, this is it.
  std::optional<DaySpan> transit;
  std::optional<CountedFrom> transit_from;  ///< dispatch, or purchase: then handling is inside it
  std::optional<bool> express;              ///< a faster service than the usual one
  std::optional<bool> collection;           ///< fetched by the customer at a shop or parcel point
  std::optional<bool> international;        ///< goes abroad
  std::optional<bool> per_parcel;           ///< the fee is for each parcel; no: once for the order

  bool operator==(const DeliveryOption&) const = default;
};

enum class ReturnMethod : std::uint8_t { store, post, courier, drop_off };
inline constexpr std::size_t kReturnMethods = 4;
std::string_view to_string(ReturnMethod method);  ///< `drop-off`

enum class Payer : std::uint8_t { shop, customer };
std::string_view to_string(Payer payer);  ///< `shop`

/// Who bears the way back. `fee` is what the shop charges or keeps from the refund; 0 with `shop`.
/// `customer` without a fee: she pays a carrier of her choice.
struct ReturnCost {
  std::optional<Payer> paid_by;
  std::optional<Money> fee;

  bool operator==(const ReturnCost&) const = default;
};

struct ReturnMethodTerms {
  std::optional<bool> offered;
  ReturnCost cost;

  bool operator==(const ReturnMethodTerms&) const = default;
};

enum class RefundForm : std::uint8_t { original_payment, credit, exchange };
std::string_view to_string(RefundForm form);  ///< `original payment`

/// What shops commonly leave out of their returns.
enum class ReturnItem : std::uint8_t {
  sale,
  swimwear,
  underwear,
  hosiery,
  pierced_jewellery,
  jewellery,
  personalised,
  made_to_order,
  beauty,
  sealed,  ///< sealed for hygiene and opened
  face_coverings,
  hats,
  shoes,
  gift_cards,
  worn,
};
std::string_view to_string(ReturnItem item);  ///< `pierced-jewellery`

/// What the shop does with such an item.
enum class ItemRule : std::uint8_t {
  returnable,      ///< said to be like any other
  not_returnable,  ///< faults aside
  unopened_only,   ///< only with the hygiene seal or strip in place
  exchange_only,
  credit_only,
  exchange_or_credit,
};
std::string_view to_string(ItemRule rule);  ///< `not returnable`

/// What a return has to have.
enum class ReturnCondition : std::uint8_t {
  tags_on,
  unworn,
  unwashed,
  undamaged,
  original_packaging,
  receipt,        ///< proof of purchase
  returns_form,   ///< a form or slip in the parcel
  request_first,  ///< a return number or a message before sending
  hygiene_seal_on,
};
std::string_view to_string(ReturnCondition condition);  ///< `tags-on`

/// How a shop takes things back, for one region. Exchanges and refunds as the shop grants them of
/// its own accord; statutory rights may go further.
struct ReturnPolicy {
  std::string region;  ///< as in field names, upper case: `EU`, `IE`; empty: wherever no other says
  std::optional<bool> accepted;  ///< no: the shop takes nothing back unless faulty
  std::optional<ReturnWindow> window;
  std::optional<DaySpan> send_back_within;  ///< after telling the shop, where that is a second step
  std::optional<std::vector<SeasonalWindow>> seasons;  ///< in order of `from`, `to`, `until`
  ReturnCost cost;  ///< of the way back, unless a method says otherwise
  std::map<ReturnMethod, ReturnMethodTerms> methods;
  std::optional<std::vector<RefundForm>>
      refund;                             ///< what the customer can have; in order of the enum
  std::optional<DaySpan> refund_within;   ///< after the return arrived
  std::optional<bool> delivery_refunded;  ///< the fee of the original delivery
  std::optional<bool> exchange;
  std::optional<Money> restocking_fee;           ///< once for the return
  std::optional<std::int32_t> restocking_share;  ///< of the price, in 1/100 percent
  std::map<ReturnItem, ItemRule> items;          ///< only what the shop speaks of
  std::map<ReturnCondition, bool> conditions;    ///< true: needed; false: said not to be needed

  bool operator==(const ReturnPolicy&) const = default;
};

/// How sure a field is. `doubtful` never stands in Terms that are compared: it waits for a yes.
enum class TermsConfidence : std::uint8_t { stated, doubtful, confirmed };
std::string_view to_string(TermsConfidence confidence);  ///< `stated`
std::optional<TermsConfidence> parse_terms_confidence(std::string_view name);

/// Where a field came from.
struct TermsEvidence {
  std::string sentence;    ///< as it stands there; empty for what was typed in
  std::string document;    ///< file name; empty for what was typed in
  std::uint64_t byte = 0;  ///< of the sentence in the document, from 0
  TermsConfidence confidence = TermsConfidence::stated;
  std::string doubt;        ///< why it is doubtful; empty otherwise
  std::string contradicts;  ///< the sentence that says otherwise; empty otherwise

  bool operator==(const TermsEvidence&) const = default;
};

/// By field name.
using TermsEvidenceMap = std::map<std::string, TermsEvidence, std::less<>>;

struct Terms {
  std::string shop;  ///< slug; empty if not known
  std::optional<Day> observed;
  std::vector<DeliveryOption> delivery;  ///< each key once
  std::vector<ReturnPolicy> returns;     ///< each region once
  TermsEvidenceMap evidence;             ///< only of fields that have a value
};

/// Equal in meaning: evidence and the order of options and policies do not count.
bool operator==(const Terms& a, const Terms& b);

/// The policy of a region by its own name; nothing if there is none.
const ReturnPolicy* find_policy(const Terms& terms, std::string_view region);
const DeliveryOption* find_option(const Terms& terms, std::string_view key);

}  // namespace rangebook
