// Ostrel House (invented): GBP, saved product pages, with tops and knitwear as a table. In AW26
// most things cost more, some fabrics are cheaper ones, and markdowns move. Its delivery fee and
// returns change too: the pages say so in their footers.
#include "demo-feeds/story.h"
#include "demo-feeds/telling.h"

namespace demo {
namespace {

House house() {
  return {.slug = "ostrel-house",
          .name = "Ostrel House",
          .country = "GB",
          .currency = "GBP",
          .code_prefix = "OH",
          .first_code = 20100,
          .price_percent = 110,
          .size_low = 6,
          .size_high = 18,
          .domain = "ostrel-house"};
}

Range first_range(Inventor& inventor) {
  Turn turn(inventor, inventor.invent_range({{"dresses", 20},
                                             {"trousers", 14},
                                             {"skirts", 10},
                                             {"jackets-coats", 12},
                                             {"scarves", 5},
                                             {"tops", 14},
                                             {"knitwear", 12}}));
  each(turn.draw("dresses", 4), [&](int uid) { turn.mark_down(uid, 20); });
  each(turn.draw("knitwear", 3), [&](int uid) { turn.mark_down(uid, 30); });
  each(turn.draw("jackets-coats", 2), [&](int uid) { turn.mark_down(uid, 15); });
  each(turn.draw("skirts", 2, on_shelf), [&](int uid) { turn.sell_out(uid); });
  each(turn.draw("trousers", 2), [&](int uid) { turn.add_fit(uid, Fit::petite, 6, 14); });
  return turn.now();
}

void markdowns(Turn& turn) {
  each(turn.draw("dresses", 2, marked_down), [&](int uid) { turn.change_markdown(uid, 40); });
  each(turn.draw("knitwear", 1, marked_down), [&](int uid) { turn.change_markdown(uid, 10); });
  each(turn.draw("dresses", 1, marked_down), [&](int uid) { turn.end_markdown(uid); });
  each(turn.draw("knitwear", 1, marked_down), [&](int uid) { turn.end_markdown(uid); });
  each(turn.draw("jackets-coats", 1, marked_down), [&](int uid) { turn.end_markdown(uid); });
  each(turn.draw("skirts", 3, on_shelf), [&](int uid) { turn.mark_down(uid, 25); });
  each(turn.draw("tops", 2), [&](int uid) { turn.mark_down(uid, 20); });
  each(turn.draw("dresses", 2, several_undiscounted), [&](int uid) {  // one colour only
    turn.mark_down(uid, 30, {turn.style(uid).colours.front()});
  });
  each(turn.draw("jackets-coats", 2, not_marked_down), [&](int uid) {
    turn.reprice(uid, 112);  // dearer and marked down at once: both have to be told
    turn.mark_down(uid, 20);
  });
}

void second_season(Turn& turn) {
  markdowns(turn);
  each(turn.draw("dresses", 3, not_marked_down), [&](int uid) {
    turn.reprice(uid, 108);
    turn.change_fabric(uid);
  });
  each(turn.draw("", 18, not_marked_down), [&](int uid) { turn.reprice(uid, 107); });
  each(turn.draw("trousers", 3), [&](int uid) { turn.reprice(uid, 92); });
  each(turn.draw("scarves", 1), [&](int uid) { turn.reprice(uid, 80); });
  each(turn.draw("knitwear", 2), [&](int uid) { turn.change_fabric(uid); });
  each(turn.draw("skirts", 1, sold_out), [&](int uid) { turn.restock(uid); });
  each(turn.draw("trousers", 1, on_shelf), [&](int uid) { turn.sell_out(uid); });
  each(turn.draw("tops", 1), [&](int uid) { turn.move(uid, "dresses"); });
  each(turn.draw("dresses", 2), [&](int uid) { turn.drop(uid); });
  each(turn.draw("jackets-coats", 1), [&](int uid) { turn.drop(uid); });
  for (const char* department : {"dresses", "skirts", "tops", "scarves"}) turn.add(department);
}

}  // namespace

Story ostrel_house() {
  Inventor inventor(house(), 3, 0x057E1A0D);
  const Range first = first_range(inventor);
  Turn turn(inventor, first);
  second_season(turn);

  Dialect dialect;
  dialect.variant_columns = true;
  dialect.in_stock = "in stock";
  dialect.sold_out = "sold out";
  const std::set<std::string> pages{"dresses", "trousers", "skirts", "jackets-coats", "scarves"};
  Story story{house(), {}, {}};
  story.captures.push_back({.season = "AW25",
                            .date = "2025-09-09",
                            .range = on_sale(first, inventor.random(), 6),
                            .dialect = dialect,
                            .pages = PagesForm::zip,
                            .as_pages = pages});
  story.captures.push_back({.season = "AW26",
                            .date = "2026-09-08",
                            .range = on_sale(turn.now(), inventor.random(), 6),
                            .dialect = dialect,
                            .pages = PagesForm::mixed,
                            .as_pages = pages});
  story.comparisons = {{0, 1, turn.events()}};
  return story;
}

}  // namespace demo
