// An order in words, as typed on the command line or in a form, and the order it stands for.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/order.h"

namespace rangebook {

struct OrderWords {
  std::vector<std::string> keep;  ///< amounts; `swimwear:30` where a rule may differ
  std::vector<std::string> back;
  std::string currency;
  std::string discount;
  std::string region;
  std::string bought;
  std::string delivered;
  std::string return_by;
  std::string delivery = "home";
  int parcels = 1;
  int grams = 0;
};

/// Throws UsageError for a word that cannot be taken.
Order order_of(const OrderWords& said);
std::optional<Day> day_in(const std::string& word, std::string_view option);

std::vector<std::string> return_item_names();
std::vector<std::string> return_method_names();
std::vector<std::string> delivery_wish_names();

}  // namespace rangebook
