// Words of an order to values; what is wrong with one is said with the nearest right one.
#include "tracker/app/order_words.h"

#include <fmt/format.h>

#include <cctype>

#include "schema/nearest_word.h"
#include "schema/terms_names.h"
#include "schema/terms_values.h"
#include "tracker/app/cli_words.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/scope_words.h"

namespace rangebook {
namespace {

template <typename Enum, std::size_t N>
std::vector<std::string> names_in(const NameTable<Enum, N>& table) {
  std::vector<std::string> names;
  for (const auto& [value, name] : table) names.emplace_back(name);
  return names;
}

template <typename Enum, std::size_t N>
Enum word_in(const NameTable<Enum, N>& table, const std::string& word, std::string_view option) {
  if (const auto value = value_of(table, word)) return *value;
  const auto names = names_in(table);
  throw UsageError{fmt::format("{}: \"{}\" is not known.{} There are: {}.", option, word,
                               did_you_mean(word, names), joined(names))};
}

constexpr NameTable<DeliveryWish, 3> kWishes{{{DeliveryWish::cheapest_home, "home"},
                                              {DeliveryWish::express, "express"},
                                              {DeliveryWish::collection, "collection"}}};

MinorUnits amount_in(const std::string& word, Currency currency, std::string_view option) {
  const auto money = read_money(word, currency);
  if (money && money->currency == currency && money->minor <= kMaxOrderValue) return money->minor;
  throw UsageError{
      fmt::format("{}: \"{}\" is no amount in {}; write it as 79.90, with at most 10 million "
                  "in all.",
                  option, word, currency.code())};
}

/// `79.90`, or `swimwear:30.00`.
OrderItem item_in(const std::string& word, bool sent_back, Currency currency) {
  const std::string_view option = sent_back ? "--back" : "--keep";
  OrderItem item;
  item.sent_back = sent_back;
  const auto colon = word.find(':');
  if (colon != word.npos) item.kind = word_in(kReturnItems, word.substr(0, colon), option);
  item.price = amount_in(colon == word.npos ? word : word.substr(colon + 1), currency, option);
  return item;
}

}  // namespace

Order order_of(const OrderWords& said) {
  const auto currency = Currency::from_code(said.currency);
  if (!currency) {
    throw UsageError{"--currency: \"" + said.currency +
                     "\" is no currency of ISO 4217, such as EUR."};
  }
  Order order{*currency, {}, 0, said.parcels, {}, said.region, {}, {}, {}, {}};
  MinorUnits total = 0;
  for (const auto& word : said.keep) order.items.push_back(item_in(word, false, *currency));
  for (const auto& word : said.back) order.items.push_back(item_in(word, true, *currency));
  for (const OrderItem& item : order.items) total += item.price;
  if (order.items.empty()) {
    throw UsageError{
        "An order has something in it: --keep 79.90 for what stays, --back 45 for what goes "
        "back; as often as needed."};
  }
  if (total > kMaxOrderValue) throw UsageError{"The order is worth more than 10 million."};
  if (!said.discount.empty()) order.discount = amount_in(said.discount, *currency, "--discount");
  if (order.discount > total) throw UsageError{"--discount is more than the order is worth."};
  if (said.parcels < 1 || said.parcels > 1000) throw UsageError{"--parcels: from 1 to 1000."};
  for (char& sign : order.region) sign = static_cast<char>(std::toupper(sign));
  if (!order.region.empty() && order.region.size() != 2) {
    throw UsageError{"--to takes a two-letter code of ISO 3166, such as GB or IE."};
  }
  if (said.grams > 0) order.grams = said.grams;
  if (!said.return_by.empty()) {
    order.method = word_in(kReturnMethodNames, said.return_by, "--return-by");
  }
  order.delivery = word_in(kWishes, said.delivery, "--delivery");
  order.bought = day_in(said.bought, "--bought").value_or(today());
  order.delivered = day_in(said.delivered, "--delivered");
  if (order.delivered && *order.delivered < order.bought) {
    throw UsageError{"--delivered is before --bought."};
  }
  return order;
}

std::optional<Day> day_in(const std::string& word, std::string_view option) {
  if (word.empty()) return std::nullopt;
  const auto day = parse_day(word);
  if (!day)
    throw UsageError{fmt::format("{}: \"{}\" is no date; write it as 2026-09-01.", option, word)};
  return day;
}

std::vector<std::string> return_item_names() { return names_in(kReturnItems); }
std::vector<std::string> return_method_names() { return names_in(kReturnMethodNames); }
std::vector<std::string> delivery_wish_names() { return names_in(kWishes); }

}  // namespace rangebook
