// Stated size ranges: one row a shop and date.
#include "tracker/store/stated_sizes.h"

#include <string>

namespace rangebook {

void put_stated_sizes(const Book& book, std::string_view shop, const StatedSizes& stated) {
  auto put = book.database().prepare(
      "INSERT INTO stated_sizes (shop_id, sizes, stated_on) "
      "SELECT id, ?2, ?3 FROM shop WHERE slug = ?1 "
      "ON CONFLICT (shop_id, stated_on) DO UPDATE SET sizes = excluded.sizes");
  put.bind(1, shop).bind(2, stated.words).bind(3, to_string(stated.on)).run();
}

std::vector<StatedSizes> stated_sizes(const Book& book, std::string_view shop) {
  auto rows = book.database().prepare(
      "SELECT t.sizes, t.stated_on FROM stated_sizes t JOIN shop s ON s.id = t.shop_id "
      "WHERE s.slug = ?1 ORDER BY t.stated_on");
  rows.bind(1, shop);
  std::vector<StatedSizes> found;
  while (rows.step()) {
    if (const auto day = parse_day(rows.text(1))) {
      found.push_back({std::string(rows.text(0)), *day});
    }
  }
  return found;
}

}  // namespace rangebook
