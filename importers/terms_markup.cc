// Finds the things of shipping and returns among all values of a page, whatever they hang on.
#include "importers/terms_markup.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "importers/byte_search.h"
#include "importers/html_scan.h"
#include "importers/json_ld.h"
#include "importers/markup_items.h"
#include "importers/microdata.h"
#include "importers/page_syntaxes.h"
#include "importers/policy_tokens.h"
#include "importers/rdfa.h"
#include "importers/schema_org_words.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

constexpr std::string_view kMembers = "It holds for members only.";
constexpr std::string_view kConditions = "It holds under conditions that were not read.";

/// A whole number, also written `3.0`.
std::optional<int> whole_number(std::string_view text) {
  if (const auto point = text.find('.'); point != text.npos) {
    if (text.find_first_not_of('0', point + 1) != text.npos) return std::nullopt;
    text = text.substr(0, point);
  }
  if (text.empty() || text.size() > 5) return std::nullopt;
  int value = 0;
  for (const char c : text) {
    if (!is_ascii_digit(c)) return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value <= kMaxTermsCount ? std::optional(value) : std::nullopt;
}

std::string upper(std::string_view text) {
  std::string out;
  for (const char c : text) out += c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c;
  return out;
}

bool is_code(std::string_view text) {
  return text.size() == 2 && is_ascii_letter(text[0]) && is_ascii_letter(text[1]);
}

class MarkupTerms {
 public:
  MarkupTerms(const LinkedData& data, const PolicyFrame& frame, PolicyClaims& claims)
      : data_(data), frame_(frame), claims_(claims) {}

  void read_all() {
    for (JsonId id = 1; id < data_.size(); ++id) {
      if (!data_.is_object(id) || data_.is_reference(id)) continue;
      if (data_.is_a(id, "MerchantReturnPolicy")) read_policy(id);
      const bool shipping = data_.is_a(id, "OfferShippingDetails") ||
                            data_.is_a(id, "ShippingRateSettings") ||
                            data_.is_a(id, "DeliveryTimeSettings");
      if (shipping && !inner_.contains(id)) read_shipping(id);
      if (data_.is_a(id, "ShippingService") && !inner_.contains(id)) read_service(id);
    }
  }

 private:
  /// The thing that is read, for claims: its prefix, its doubt and its place.
  struct Place {
    std::string prefix;
    std::string doubt;
    JsonId thing = 0;
  };

  void claim(const Place& place, std::string_view field, std::string text,
             std::string_view property, std::string_view value) {
    claims_.add({place.prefix + std::string(field), std::move(text),
                 fmt::format("{}: {}", property, clean_text(value)), data_.node(place.thing).byte,
                 place.doubt, false});
  }

  std::string_view name(JsonId thing, std::string_view property) const {
    return schema_org_name(data_.text(thing, property));
  }

  /// Countries or named places of a property (DefinedRegion, Country, or a code).
  std::vector<std::string> places(JsonId thing, std::string_view property) const {
    std::vector<std::string> out;
    for (const JsonId value : data_.values(thing, property)) {
      const JsonId region = data_.resolve(value);
      auto codes = data_.is_object(region) ? data_.values(region, "addressCountry")
                                           : std::vector<JsonId>{value};
      if (codes.empty()) codes = {region};
      for (const JsonId code : codes) {
        const auto text = data_.text(data_.resolve(code));
        if (is_code(text)) out.push_back(upper(text));
      }
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
  }

  std::optional<Money> amount(JsonId thing, std::string_view property) const {
    JsonId value = data_.resolve(data_.first(thing, property));
    if (value == 0) return std::nullopt;
    for (int depth = 0; depth < 3 && data_.is_a(value, "ShippingRateSettings"); ++depth) {
      value = data_.resolve(data_.first(value, "shippingRate"));
    }
    if (!data_.is_object(value)) return money(data_.text(value), {});
    auto number = data_.text(value, "value");
    if (number.empty()) number = data_.text(value, "price");
    auto code = data_.text(value, "currency");
    if (code.empty()) code = data_.text(value, "priceCurrency");
    if (number.empty() && property != "shippingRate") number = data_.text(value, "minValue");
    return money(number, code);
  }

  /// A number as markup writes it: `4.95`, `0`, `10`, `3.5`.
  std::optional<Money> money(std::string_view number, std::string_view code) const {
    const auto currency = code.empty() ? frame_.currency : Currency::from_code(code);
    if (!currency) return std::nullopt;
    std::string text(number);
    if (const auto point = text.find('.'); point != text.npos) {
      const auto digits = static_cast<std::size_t>(currency->exponent());
      while (text.size() - point - 1 < digits) text += '0';
      while (text.size() - point - 1 > digits && text.back() == '0') text.pop_back();
      if (text.back() == '.') text.pop_back();
    }
    return read_money(text + " " + std::string(currency->code()), {});
  }

  bool has_shares(JsonId thing) const {
    const JsonId rate = data_.resolve(data_.first(thing, "shippingRate"));
    for (const JsonId one : {thing, rate}) {
      if (one == 0 || !data_.is_object(one)) continue;
      if (data_.first(one, "weightPercentage") != 0 || data_.first(one, "orderPercentage") != 0) {
        return true;
      }
    }
    return false;
  }

  /// A time: QuantitativeValue, ServicePeriod with one, or an ISO 8601 duration.
  std::optional<DaySpan> time(JsonId thing, std::string_view property, bool working) const {
    JsonId value = data_.resolve(data_.first(thing, property));
    if (value == 0) return std::nullopt;
    if (data_.is_object(value) && data_.first(value, "duration") != 0) {
      working = working || is_monday_to_friday(value);
      value = data_.resolve(data_.first(value, "duration"));
    }
    std::optional<DaySpan> span;
    if (!data_.is_object(value)) {
      span = read_iso_duration(data_.text(value));
    } else {
      span = quantity(value);
    }
    if (span && working && span->unit == DayUnit::days) span->unit = DayUnit::working_days;
    return span;
  }

  std::optional<DaySpan> quantity(JsonId value) const {
    const auto least = data_.text(value, "minValue");
    const auto most = data_.text(value, "maxValue");
    const auto one = data_.text(value, "value");
    DaySpan span;
    span.min = whole_number(least.empty() ? one : least);
    span.max = whole_number(most.empty() ? one : most);
    if (!span.min && !span.max) return std::nullopt;
    if (span.min && span.max && *span.min > *span.max) return std::nullopt;
    const std::string unit = upper(data_.text(value, "unitCode"));
    if (unit == "WEE") {
      if (span.min) *span.min *= 7;
      if (span.max) *span.max *= 7;
    } else if (unit == "MON") {
      span.unit = DayUnit::months;
    } else if (unit == "HUR" || unit == "H") {
      if (span.min) *span.min = (*span.min + 23) / 24;
      if (span.max) *span.max = (*span.max + 23) / 24;
    } else if (!unit.empty() && unit != "DAY" && unit != "D") {
      return std::nullopt;
    }
    return span;
  }

  bool is_monday_to_friday(JsonId thing) const {
    std::set<std::string> days;
    for (const JsonId value : data_.values(thing, "businessDays")) {
      const JsonId hours = data_.resolve(value);
      for (const JsonId day : data_.values(hours, "dayOfWeek")) {
        days.insert(std::string(schema_org_name(data_.text(data_.resolve(day)))));
      }
      if (!data_.is_object(hours)) days.insert(std::string(schema_org_name(data_.text(hours))));
    }
    return days == std::set<std::string>{"Monday", "Tuesday", "Wednesday", "Thursday", "Friday"};
  }

  /// The option's key and what follows from its name and places.
  Place option_of(JsonId thing, std::string_view label, const std::vector<std::string>& regions) {
    std::string key = "standard";
    for (const auto& mark : policy_marks(label, policy_tokens(label), {})) {
      if (mark.role == PolicyRole::kind) key = mark.value;
    }
    const std::string kind = key;
    const bool home = std::find(regions.begin(), regions.end(), frame_.country) != regions.end();
    const bool abroad = !regions.empty() && !home && !frame_.country.empty();
    if (abroad) {
      key += '-';
      for (const char c : regions.front()) key += ascii_lower(c);
    }
    Place place{"delivery." + key + ".", {}, thing};
    if (data_.first(thing, "validForMemberTier") != 0) place.doubt = kMembers;
    if (!label.empty()) {
      claim(place, "name", clean_text(label), "name", label);
    }
    if (!regions.empty()) {
      claim(place, "regions", value_text(regions), "shippingDestination", value_text(regions));
    }
    if (abroad) claim(place, "international", "yes", "shippingDestination", value_text(regions));
    if (kind == "express" || kind == "next-day" || kind == "same-day") {
      claim(place, "express", "yes", "name", label);
    }
    const auto fulfilment = name(thing, "fulfillmentType");
    if (fulfilment == "FulfillmentTypeCollectionPoint" ||
        fulfilment == "FulfillmentTypePickupDropoff" ||
        fulfilment == "FulfillmentTypePickupInStore" || kind == "collection" ||
        kind == "pickup-point") {
      claim(place, "collection", "yes", "fulfillmentType", fulfilment.empty() ? label : fulfilment);
    }
    return place;
  }

  void claim_rate(Place place, JsonId thing) {
    if (has_shares(thing)) place.doubt = kConditions;
    if (const auto fee = amount(thing, "shippingRate")) {
      claim(place, "fee", value_text(*fee), "shippingRate", to_string(*fee));
    }
    const JsonId rate = data_.resolve(data_.first(thing, "shippingRate"));
    for (const JsonId one : {thing, rate}) {
      if (one == 0 || !data_.is_object(one)) continue;
      // "A monetary value above (or at) which the shipping rate becomes free."
      if (const auto free = amount(one, "freeShippingThreshold")) {
        claim(place, "free_over", value_text(Threshold{*free, true}), "freeShippingThreshold",
              to_string(*free));
      }
    }
    inner_.insert(rate);
  }

  void claim_times(const Place& place, JsonId thing) {
    const bool working = is_monday_to_friday(thing);
    if (const auto span = time(thing, "handlingTime", working)) {
      claim(place, "handling", value_text(*span), "handlingTime", value_text(*span));
    }
    if (const auto span = time(thing, "transitTime", false)) {
      claim(place, "transit", value_text(*span), "transitTime", value_text(*span));
    }
  }

  bool does_not_ship(JsonId thing) const {
    return upper(schema_org_name(data_.text(thing, "doesNotShip"))) == "TRUE";
  }

  void read_shipping(JsonId thing) {
    for (const JsonId service : data_.values(thing, "hasShippingService")) {
      inner_.insert(data_.resolve(service));
    }
    if (does_not_ship(thing)) return;
    auto label = data_.text(thing, "shippingLabel");
    if (label.empty()) label = data_.text(thing, "name");
    const auto regions = places(thing, "shippingDestination");
    const JsonId times = data_.resolve(data_.first(thing, "deliveryTime"));
    const auto services = data_.values(thing, "hasShippingService");
    const bool states = data_.first(thing, "shippingRate") != 0 || times != 0 ||
                        data_.first(thing, "freeShippingThreshold") != 0;
    if (states) {
      const Place place = option_of(thing, label, regions);
      claim_rate(place, thing);
      if (times != 0) claim_times(place, times);
    }
    for (const JsonId service : services) read_service(data_.resolve(service), regions);
  }

  void read_service(JsonId service, const std::vector<std::string>& around = {}) {
    const bool members = data_.first(service, "validForMemberTier") != 0;
    for (const JsonId value : data_.values(service, "shippingConditions")) {
      const JsonId conditions = data_.resolve(value);
      if (does_not_ship(conditions)) continue;
      auto regions = places(conditions, "shippingDestination");
      if (regions.empty()) regions = around;
      const JsonId rate = data_.resolve(data_.first(conditions, "shippingRate"));
      inner_.insert(rate);
      const bool time = data_.first(conditions, "transitTime") != 0;
      if (rate == 0 && !time) continue;
      Place place = option_of(service, data_.text(service, "name"), regions);
      if (members) place.doubt = kMembers;
      claim_times(place, service);
      claim_times(place, conditions);
      claim_conditions(place, conditions);
    }
  }

  void claim_conditions(Place place, JsonId conditions) {
    const JsonId order = data_.resolve(data_.first(conditions, "orderValue"));
    const bool bounded =
        data_.first(conditions, "weight") != 0 || data_.first(conditions, "numItems") != 0;
    const auto fee = amount(conditions, "shippingRate");
    if (order != 0 && fee && fee->minor == 0 && !bounded && data_.text(order, "maxValue").empty()) {
      if (const auto from = amount(conditions, "orderValue")) {
        return claim(place, "free_over", value_text(Threshold{*from, true}), "orderValue",
                     to_string(*from));
      }
    }
    if (order != 0 || bounded) place.doubt = kConditions;
    claim_rate(place, conditions);
  }

  void read_policy(JsonId thing) {
    const auto countries = places(thing, "applicableCountry");
    const bool home =
        countries.empty() || frame_.country.empty() ||
        std::find(countries.begin(), countries.end(), frame_.country) != countries.end();
    const std::vector<std::string> regions = home ? std::vector<std::string>{""} : countries;
    for (const auto& region : regions) {
      Place place{region.empty() ? "return." : "return." + region + ".", {}, thing};
      if (data_.first(thing, "validForMemberTier") != 0) place.doubt = kMembers;
      read_window(place);
      read_methods(place);
      read_fees(place);
      read_refund(place);
      read_seasons(place);
    }
  }

  void read_window(const Place& place) {
    const auto category = name(place.thing, "returnPolicyCategory");
    if (category == "MerchantReturnNotPermitted") {
      return claim(place, "accepted", "no", "returnPolicyCategory", category);
    }
    if (category == "MerchantReturnUnlimitedWindow") {
      return claim(place, "window", "no limit", "returnPolicyCategory", category);
    }
    // "The number of days (from the delivery date)", or a fixed date.
    const auto days = data_.text(place.thing, "merchantReturnDays");
    if (const auto count = whole_number(days)) {
      claim(place, "window", value_text(ReturnWindow{*count, DayUnit::days, CountedFrom::delivery}),
            "merchantReturnDays", days);
    } else if (const auto day = read_season_day(days.substr(0, 10))) {
      claim(place, "seasons", value_text(std::vector<SeasonalWindow>{{{}, {}, day, {}}}),
            "merchantReturnDays", days);
    }
  }

  void read_methods(const Place& place) {
    for (const JsonId value : data_.values(place.thing, "returnMethod")) {
      const auto method = schema_org_name(data_.text(data_.resolve(value)));
      if (method == "ReturnByMail") claim(place, "post", "yes", "returnMethod", method);
      if (method == "ReturnInStore") claim(place, "store", "yes", "returnMethod", method);
      if (method == "ReturnAtKiosk") claim(place, "drop-off", "yes", "returnMethod", method);
    }
    const auto store = upper(schema_org_name(data_.text(place.thing, "inStoreReturnsOffered")));
    if (store == "TRUE" || store == "FALSE") {
      claim(place, "store", store == "TRUE" ? "yes" : "no", "inStoreReturnsOffered", store);
    }
  }

  /// What a change of mind costs: said for itself, else for all returns.
  void read_fees(const Place& place) {
    std::string_view property = "customerRemorseReturnFees";
    std::string_view sum = "customerRemorseReturnShippingFeesAmount";
    if (data_.first(place.thing, property) == 0) {
      property = "returnFees";
      sum = "returnShippingFeesAmount";
    }
    for (const JsonId value : data_.values(place.thing, property)) {
      const auto fees = schema_org_name(data_.text(data_.resolve(value)));
      if (fees == "FreeReturn") {
        claim(place, "paid_by", "shop", property, fees);
        if (frame_.currency) {
          claim(place, "fee", value_text(Money{0, *frame_.currency}), property, fees);
        }
      } else if (fees == "ReturnFeesCustomerResponsibility" || fees == "ReturnShippingFees") {
        claim(place, "paid_by", "customer", property, fees);
      } else if (fees == "OriginalShippingFees") {
        claim(place, "delivery_refunded", "no", property, fees);
      }
    }
    if (const auto fee = amount(place.thing, sum)) {
      claim(place, "fee", value_text(*fee), sum, to_string(*fee));
    }
    const auto restocking = data_.text(place.thing, "restockingFee");
    if (const auto share = read_share(std::string(restocking) + "%")) {
      claim(place, "restocking_share", share_text(*share), "restockingFee", restocking);
    } else if (const auto fee = amount(place.thing, "restockingFee")) {
      claim(place, "restocking_fee", value_text(*fee), "restockingFee", to_string(*fee));
    }
  }

  void read_refund(const Place& place) {
    std::vector<RefundForm> forms;
    std::string words;
    for (const JsonId value : data_.values(place.thing, "refundType")) {
      const auto type = schema_org_name(data_.text(data_.resolve(value)));
      if (type == "FullRefund") forms.push_back(RefundForm::original_payment);
      if (type == "StoreCreditRefund") forms.push_back(RefundForm::credit);
      if (type == "ExchangeRefund") forms.push_back(RefundForm::exchange);
      words += (words.empty() ? "" : ", ") + std::string(type);
    }
    std::sort(forms.begin(), forms.end());
    forms.erase(std::unique(forms.begin(), forms.end()), forms.end());
    if (!forms.empty()) claim(place, "refund", value_text(forms), "refundType", words);
  }

  void read_seasons(Place place) {
    std::vector<SeasonalWindow> seasons;
    for (const JsonId value : data_.values(place.thing, "returnPolicySeasonalOverride")) {
      const JsonId season = data_.resolve(value);
      SeasonalWindow window;
      window.from = read_season_day(data_.text(season, "startDate").substr(0, 10));
      window.to = read_season_day(data_.text(season, "endDate").substr(0, 10));
      const auto days = data_.text(season, "merchantReturnDays");
      window.days = whole_number(days);
      if (!window.days) window.until = read_season_day(days.substr(0, 10));
      if (window.until || window.days) seasons.push_back(window);
      if (window.to && window.to->year && frame_.observed) {
        const Day over{date::year{*window.to->year} / date::month{window.to->month} /
                       date::day{window.to->day}};
        if (over < *frame_.observed) place.doubt = "These dates are over.";
      }
    }
    if (seasons.empty()) return;
    std::sort(seasons.begin(), seasons.end());
    const std::string text = value_text(seasons);
    claim(place, "seasons", text, "returnPolicySeasonalOverride", text);
  }

  const LinkedData& data_;
  const PolicyFrame& frame_;
  PolicyClaims& claims_;
  std::set<JsonId> inner_;  ///< read as a part of another thing
};

}  // namespace

std::optional<DaySpan> read_iso_duration(std::string_view text) {
  if (!text.starts_with('P') || text.size() < 3) return std::nullopt;
  text.remove_prefix(1);
  const bool clock = text.starts_with('T');
  if (clock) text.remove_prefix(1);
  const char unit = text.back();
  const auto count = whole_number(text.substr(0, text.size() - 1));
  if (!count) return std::nullopt;
  DaySpan span{*count, *count, DayUnit::days};
  const auto times = [&](int factor) { span.min = span.max = *count * factor; };
  if (clock && unit != 'H') return std::nullopt;
  if (clock) {
    span.min = span.max = (*count + 23) / 24;
  } else if (unit == 'W') {
    times(7);
  } else if (unit == 'M') {
    span.unit = DayUnit::months;
  } else if (unit == 'Y') {
    span.unit = DayUnit::months;
    times(12);
  } else if (unit != 'D') {
    return std::nullopt;
  }
  return span;
}

void add_markup_claims(std::string_view html, const HtmlTree* tree, const PolicyFrame& frame,
                       PolicyClaims& claims) {
  JsonTree values;
  const PageScan scan = scan_page(html);
  for (const auto& block : scan.json_ld) values.add(block.text, block.byte);
  if (tree != nullptr && mentions_other_markup(html)) {
    add_items(values, read_microdata(*tree));
    add_items(values, read_rdfa(*tree));
  }
  LinkedData data(values);
  data.set_language(scan.language.value_or(""));
  MarkupTerms(data, frame, claims).read_all();
}

}  // namespace rangebook
