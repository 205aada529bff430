// Column names of the manual CSV contract.
#include "schema/raw_row.h"

namespace rangebook {
namespace {

constexpr std::array<std::string_view, kFieldCount> kNames{
    "line_code",  "name",     "category", "colour",      "size",        "price",
    "full_price", "currency", "in_stock", "composition", "description", "url",
    "image",      "gtin",     "group_id", "variant_code"};

}  // namespace

std::string_view to_string(Field field) { return kNames[static_cast<std::size_t>(field)]; }

}  // namespace rangebook
