// The table of fields: for each its name, its words, and how it is got and set.
#include "schema/terms_fields.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <unordered_map>
#include <utility>

#include "schema/nearest_word.h"
#include "schema/terms_names.h"
#include "schema/terms_values.h"

namespace rangebook {
namespace {

constexpr std::string_view kYesNo = "yes or no";
constexpr std::string_view kAmount = "an amount with its currency, as in 3.95 GBP, or 0.00 GBP";
constexpr std::string_view kDays = "days, as in 3-5 working days, up to 2 days, 1 month";
constexpr std::string_view kLimit = "an order value, as in 50.00 GBP (or more) or over 50.00 GBP";

/// How a field of an option or a policy is got and set. Setting an empty text clears it; false:
/// the text is no value of the field.
template <typename Owner>
struct Access {
  std::function<std::optional<std::string>(const Owner&)> get;
  std::function<bool(Owner&, std::string_view, std::optional<Currency>)> set;
};

template <typename Owner>
struct Row {
  TermsField field;
  Access<Owner> access;
};

template <typename T>
bool set_value(std::optional<T>& value, std::string_view text, std::optional<Currency> home) {
  if (trimmed(text).empty()) {
    value.reset();
    return true;
  }
  auto read = read_value<T>(text, home);
  if (!read) return false;
  value = std::move(read);
  return true;
}

template <typename T>
std::optional<std::string> get_value(const std::optional<T>& value) {
  return value ? std::optional(value_text(*value)) : std::nullopt;
}

template <typename Owner, typename T>
Access<Owner> member(std::optional<T> Owner::*place) {
  return {[place](const Owner& owner) { return get_value(owner.*place); },
          [place](Owner& owner, std::string_view text, std::optional<Currency> home) {
            return set_value(owner.*place, text, home);
          }};
}

template <typename T>
Access<ReturnPolicy> cost(std::optional<T> ReturnCost::*place) {
  return {[place](const ReturnPolicy& policy) { return get_value(policy.cost.*place); },
          [place](ReturnPolicy& policy, std::string_view text, std::optional<Currency> home) {
            return set_value(policy.cost.*place, text, home);
          }};
}

/// A member of a method's terms, reached by `of`.
template <typename T, typename Of>
Access<ReturnPolicy> method_member(ReturnMethod method, Of of) {
  return {[=](const ReturnPolicy& policy) -> std::optional<std::string> {
            const auto at = policy.methods.find(method);
            if (at == policy.methods.end()) return std::nullopt;
            ReturnMethodTerms terms = at->second;
            return get_value<T>(of(terms));
          },
          [=](ReturnPolicy& policy, std::string_view text, std::optional<Currency> home) {
            ReturnMethodTerms terms = policy.methods[method];
            const bool good = set_value<T>(of(terms), text, home);
            policy.methods[method] = terms;
            if (terms == ReturnMethodTerms{}) policy.methods.erase(method);
            return good;
          }};
}

/// An entry of a map.
template <typename Key, typename T>
Access<ReturnPolicy> entry(std::map<Key, T> ReturnPolicy::*place, Key key) {
  return {[=](const ReturnPolicy& policy) -> std::optional<std::string> {
            const auto at = (policy.*place).find(key);
            if (at == (policy.*place).end()) return std::nullopt;
            return value_text(at->second);
          },
          [=](ReturnPolicy& policy, std::string_view text, std::optional<Currency> home) {
            std::optional<T> value;
            if (!set_value(value, text, home)) return false;
            if (value) {
              (policy.*place)[key] = *value;
            } else {
              (policy.*place).erase(key);
            }
            return true;
          }};
}

Access<ReturnPolicy> share() {
  return {[](const ReturnPolicy& policy) -> std::optional<std::string> {
            if (!policy.restocking_share) return std::nullopt;
            return share_text(*policy.restocking_share);
          },
          [](ReturnPolicy& policy, std::string_view text, std::optional<Currency> /*home*/) {
            const auto read = read_share(text);
            if (!read && !trimmed(text).empty()) return false;
            policy.restocking_share = read;
            return true;
          }};
}

std::vector<Row<DeliveryOption>> delivery_rows() {
  using D = DeliveryOption;
  constexpr std::string_view kRegions = "places joined by commas, as in GB, IE, highlands";
  return {
      {{"name", "name", "Standard delivery", "the shop's name for it"}, member(&D::name)},
      {{"regions", "goes to", "GB, IE", kRegions}, member(&D::regions)},
      {{"not_regions", "does not go to", "highlands", kRegions}, member(&D::not_regions)},
      {{"fee", "fee", "3.95 GBP", kAmount}, member(&D::fee)},
      {{"free_over", "free from", "50.00 GBP", kLimit}, member(&D::free_over)},
      {{"threshold_basis", "order value counted", "after discount",
        "before discount or after discount"},
       member(&D::threshold_basis)},
      {{"threshold_kept", "only what is kept counts", "yes", kYesNo}, member(&D::threshold_kept)},
      {{"minimum_order", "smallest order", "20.00 GBP", kLimit}, member(&D::minimum_order)},
      {{"fee_by_value", "fee by order value", "4.95 GBP from 0.00 GBP; 2.95 GBP from 30.00 GBP",
        "fees and the order value each starts at, rising, as in 4.95 GBP from 0.00 GBP; 2.95 GBP "
        "from 30.00 GBP"},
       member(&D::fee_by_value)},
      {{"fee_by_weight", "fee by weight", "3.95 GBP up to 2000 g; 7.95 GBP above",
        "fees and the weight each goes up to, rising, as in 3.95 GBP up to 2000 g; 7.95 GBP above"},
       member(&D::fee_by_weight)},
      {{"handling", "time to dispatch", "1-2 working days", kDays}, member(&D::handling)},
      {{"transit", "time on the way", "3-5 working days", kDays}, member(&D::transit)},
      {{"transit_from", "time on the way counted from", "dispatch", "dispatch or purchase"},
       member(&D::transit_from)},
      {{"express", "faster than usual", "yes", kYesNo}, member(&D::express)},
      {{"collection", "to be fetched", "yes", kYesNo}, member(&D::collection)},
      {{"international", "goes abroad", "yes", kYesNo}, member(&D::international)},
      {{"per_parcel", "fee for each parcel", "no", kYesNo}, member(&D::per_parcel)},
  };
}

void add_methods(std::vector<Row<ReturnPolicy>>& rows) {
  static constexpr std::array<std::array<std::string_view, 3>, kReturnMethods> kTitles{
      {{"return in a shop", "return in a shop paid by", "fee of a return in a shop"},
       {"return by post", "return by post paid by", "fee of a return by post"},
       {"fetched by courier", "courier paid by", "fee of the courier"},
       {"drop-off point", "drop-off paid by", "fee of a drop-off"}}};
  for (std::size_t i = 0; i < kReturnMethods; ++i) {
    const auto [method, name] = kReturnMethodNames[i];
    rows.push_back({{std::string(name), kTitles[i][0], "yes", kYesNo},
                    method_member<bool>(
                        method, [](auto& t) -> auto& { return t.offered; })});
    rows.push_back(
        {{fmt::format("{}.paid_by", name), kTitles[i][1], "customer", "shop or customer"},
         method_member<Payer>(
             method, [](auto& t) -> auto& { return t.cost.paid_by; })});
    rows.push_back({{fmt::format("{}.fee", name), kTitles[i][2], "2.95 GBP", kAmount},
                    method_member<Money>(
                        method, [](auto& t) -> auto& { return t.cost.fee; })});
  }
}

std::vector<Row<ReturnPolicy>> return_rows() {
  using R = ReturnPolicy;
  std::vector<Row<R>> rows{
      {{"accepted", "returns taken", "yes", kYesNo}, member(&R::accepted)},
      {{"window", "return window", "28 days from delivery",
        "days or months, and from when if it is said, as in 28 days from delivery, 1 month, no "
        "limit"},
       member(&R::window)},
      {{"send_back_within", "time to send back after telling", "14 days", kDays},
       member(&R::send_back_within)},
      {{"seasons", "seasonal window", "bought 1 Nov to 24 Dec, return by 31 Jan",
        "dates, as in bought 1 Nov to 24 Dec, return by 31 Jan"},
       member(&R::seasons)},
      {{"paid_by", "way back paid by", "customer", "shop or customer"}, cost(&ReturnCost::paid_by)},
      {{"fee", "return fee", "2.95 GBP", kAmount}, cost(&ReturnCost::fee)}};
  add_methods(rows);
  rows.insert(
      rows.end(),
      {{{"refund", "refund as", "original payment",
         "any of original payment, credit, exchange, joined by commas"},
        member(&R::refund)},
       {{"refund_within", "refunded within", "14 days", kDays}, member(&R::refund_within)},
       {{"delivery_refunded", "first delivery refunded", "no", kYesNo},
        member(&R::delivery_refunded)},
       {{"exchange", "exchange", "yes", kYesNo}, member(&R::exchange)},
       {{"restocking_fee", "restocking fee", "5.00 GBP", kAmount}, member(&R::restocking_fee)},
       {{"restocking_share", "restocking share", "10%", "a share, as in 10%"}, share()}});
  for (const auto& [item, name] : kReturnItems) {
    rows.push_back({{fmt::format("items.{}", name), name, "not returnable",
                     "returnable, not returnable, unopened only, exchange only, credit only or "
                     "exchange or credit"},
                    entry(&R::items, item)});
  }
  for (const auto& [condition, name] : kReturnConditions) {
    rows.push_back(
        {{fmt::format("needs.{}", name), name, "yes", kYesNo}, entry(&R::conditions, condition)});
  }
  return rows;
}

struct Table {
  std::vector<Row<DeliveryOption>> delivery = delivery_rows();
  std::vector<Row<ReturnPolicy>> returns = return_rows();
  std::vector<TermsField> fields;

  Table() {
    for (const auto& row : delivery) add("delivery.*.", row.field);
    for (const auto& row : returns) add("return.", row.field);
  }
  void add(std::string_view prefix, TermsField field) {
    field.name.insert(0, prefix);
    fields.push_back(std::move(field));
  }
};

const Table& table() {
  static const Table all;
  return all;
}

/// A full name taken apart.
struct Place {
  bool delivery = false;
  std::string key;   ///< option key, or region (may be empty)
  std::string name;  ///< within the option or policy
};

bool is_key(std::string_view key) {
  return !key.empty() && key.size() <= 40 && key.front() != '-' &&
         std::all_of(key.begin(), key.end(), [](char c) {
           return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
         });
}

bool is_region(std::string_view key) {
  return !key.empty() && key.size() <= 40 && key.front() >= 'A' && key.front() <= 'Z' &&
         std::all_of(key.begin(), key.end(), [](char c) {
           return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
         });
}

std::optional<Place> place_of(std::string_view field) {
  const auto cut = [&]() {
    const auto end = field.find('.');
    const auto head = field.substr(0, end);
    field = end == field.npos ? std::string_view{} : field.substr(end + 1);
    return std::string(head);
  };
  Place place;
  const auto root = cut();
  if (root != "delivery" && root != "return") return std::nullopt;
  place.delivery = root == "delivery";
  const auto head = field.substr(0, field.find('.'));
  if (place.delivery || is_region(head)) place.key = cut();
  if (place.delivery && !is_key(place.key)) return std::nullopt;
  place.name = field;
  return place;
}

template <typename Owner>
const Row<Owner>* find_row(const std::vector<Row<Owner>>& rows, std::string_view name) {
  const auto at = std::find_if(rows.begin(), rows.end(),
                               [&](const Row<Owner>& row) { return row.field.name == name; });
  return at == rows.end() ? nullptr : &*at;
}

std::string full_name(const DeliveryOption& option, const TermsField& field) {
  return fmt::format("delivery.{}.{}", option.key, field.name);
}
std::string full_name(const ReturnPolicy& policy, const TermsField& field) {
  return policy.region.empty() ? fmt::format("return.{}", field.name)
                               : fmt::format("return.{}.{}", policy.region, field.name);
}

template <typename Owner>
void add_values(std::vector<Owner> owners, std::string Owner::*key,
                const std::vector<Row<Owner>>& rows, std::vector<TermsValue>& values) {
  std::stable_sort(owners.begin(), owners.end(),
                   [&](const Owner& a, const Owner& b) { return a.*key < b.*key; });
  for (const auto& owner : owners) {
    for (const auto& row : rows) {
      if (auto text = row.access.get(owner)) {
        values.push_back({full_name(owner, row.field), std::move(*text)});
      }
    }
  }
}

TermsFault unknown_field(std::string_view field) {
  std::vector<std::string> names;
  const auto place = place_of(field);
  for (auto one : terms_fields()) {
    const auto star = one.name.find('*');
    if (star != one.name.npos) {
      one.name.replace(star, 1, place && place->delivery ? place->key : "standard");
    }
    names.push_back(one.name);
  }
  return {
      0, fmt::format("There is no field \"{}\".", field),
      "Write a field such as delivery.standard.fee or return.window." + did_you_mean(field, names)};
}

/// Sets a field of the owner with this key; makes and removes the owner as needed.
template <typename Owner>
bool set_in(std::vector<Owner>& owners, std::string Owner::*key, const Place& place,
            const Row<Owner>& row, std::string_view text, std::optional<Currency> home) {
  auto at = std::find_if(owners.begin(), owners.end(),
                         [&](const Owner& one) { return one.*key == place.key; });
  Owner owner;
  owner.*key = place.key;
  const Owner empty = owner;
  if (at != owners.end()) owner = *at;
  if (!row.access.set(owner, text, home)) return false;
  if (owner == empty) {
    if (at != owners.end()) owners.erase(at);
  } else if (at != owners.end()) {
    *at = std::move(owner);
  } else {
    owners.push_back(std::move(owner));
  }
  return true;
}

}  // namespace

const std::vector<TermsField>& terms_fields() { return table().fields; }

const TermsField* find_terms_field(std::string_view name) {
  const auto place = place_of(name);
  if (!place) return nullptr;
  const auto wanted = (place->delivery ? "delivery.*." : "return.") + place->name;
  static const auto by_name = [] {
    std::unordered_map<std::string, const TermsField*> all;
    for (const auto& one : terms_fields()) all.emplace(one.name, &one);
    return all;
  }();
  const auto at = by_name.find(wanted);
  return at == by_name.end() ? nullptr : at->second;
}

std::vector<TermsValue> stated_values(const Terms& terms) {
  std::vector<TermsValue> values;
  add_values(terms.delivery, &DeliveryOption::key, table().delivery, values);
  add_values(terms.returns, &ReturnPolicy::region, table().returns, values);
  return values;
}

std::optional<std::string> field_text(const Terms& terms, std::string_view field) {
  const auto place = place_of(field);
  if (!place) return std::nullopt;
  if (place->delivery) {
    const auto* row = find_row(table().delivery, place->name);
    const auto* option = find_option(terms, place->key);
    return row != nullptr && option != nullptr ? row->access.get(*option) : std::nullopt;
  }
  const auto* row = find_row(table().returns, place->name);
  const auto* policy = find_policy(terms, place->key);
  return row != nullptr && policy != nullptr ? row->access.get(*policy) : std::nullopt;
}

std::optional<TermsFault> set_field(Terms& terms, std::string_view field, std::string_view text,
                                    std::optional<Currency> home) {
  const auto* kind = find_terms_field(field);
  if (kind == nullptr) return unknown_field(field);
  const auto place = place_of(field);
  const bool good = place->delivery ? set_in(terms.delivery, &DeliveryOption::key, *place,
                                             *find_row(table().delivery, place->name), text, home)
                                    : set_in(terms.returns, &ReturnPolicy::region, *place,
                                             *find_row(table().returns, place->name), text, home);
  if (!good) {
    return TermsFault{0, fmt::format("\"{}\" cannot be read as {}.", trimmed(text), field),
                      fmt::format("Write {}.", kind->expects)};
  }
  if (const auto at = terms.evidence.find(field); at != terms.evidence.end()) {
    terms.evidence.erase(at);
  }
  return std::nullopt;
}

}  // namespace rangebook
