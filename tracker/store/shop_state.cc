// Numbers of captures, readings and decisions, the shop's own row, and its newest document.
#include "tracker/store/shop_state.h"

namespace rangebook {

std::map<std::string, std::string> shop_states(const Book& book) {
  constexpr int kColumns = 13;
  auto rows = book.database().prepare(
      "SELECT s.slug, s.name, s.country, s.currency, s.sizes, s.link_above, s.ask_above, "
      "c.count, c.last, d.count, d.last, r.times, "
      "(SELECT hex(max(o.sha256)) FROM capture_document p JOIN document o ON o.id = p.document_id "
      "WHERE p.capture_id = c.last) "
      "FROM shop s "
      "LEFT JOIN (SELECT shop_id, count(*) AS count, max(id) AS last FROM capture "
      "GROUP BY shop_id) c ON c.shop_id = s.id "
      "LEFT JOIN (SELECT l.shop_id, count(*) AS count, max(e.id) AS last FROM decision e "
      "JOIN line l ON l.id = e.line_a GROUP BY l.shop_id) d ON d.shop_id = s.id "
      "LEFT JOIN (SELECT c.shop_id, sum(r.times) AS times FROM reread r "
      "JOIN capture c ON c.id = r.capture_id GROUP BY c.shop_id) r ON r.shop_id = s.id");
  std::map<std::string, std::string> states;
  while (rows.step()) {
    std::string& state = states[std::string(rows.text(0))];
    for (int column = 1; column < kColumns; ++column) state.append(rows.text(column)).append("\n");
  }
  return states;
}

}  // namespace rangebook
