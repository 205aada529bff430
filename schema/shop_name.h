// What a shop is called where its name is said: its name, or its short name where it has none.
#pragma once

#include <string_view>

#include "schema/capture.h"

namespace rangebook {

inline std::string_view shop_name(std::string_view name, std::string_view slug) {
  return name.empty() ? slug : name;
}
inline std::string_view shop_name(const Shop& shop) { return shop_name(shop.name, shop.slug); }

}  // namespace rangebook
