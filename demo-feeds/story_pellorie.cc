// Pellorie (invented): EUR, one row a line. In AW26 only dresses, knitwear and tops were captured,
// and one row of the export had lost its name: nothing else may be called gone.
#include "demo-feeds/story.h"
#include "demo-feeds/telling.h"

namespace demo {
namespace {

House house() {
  return {.slug = "pellorie",
          .name = "Pellorie",
          .country = "IE",
          .currency = "EUR",
          .code_prefix = "PE-",
          .first_code = 300,
          .price_percent = 95,
          .ninety_endings = true,
          .size_low = 8,
          .size_high = 22,
          .domain = "pellorie"};
}

Range first_range(Inventor& inventor) {
  Turn turn(inventor, inventor.invent_range({{"dresses", 24},
                                             {"tops", 22},
                                             {"knitwear", 18},
                                             {"trousers", 16},
                                             {"skirts", 10},
                                             {"jackets-coats", 12},
                                             {"scarves", 6}}));
  each(turn.draw("dresses", 3), [&](int uid) { turn.open_gap(uid, 14); });
  each(turn.draw("tops", 3, on_shelf), [&](int uid) { turn.sell_out(uid); });
  each(turn.draw("knitwear", 2), [&](int uid) { turn.mark_down(uid, 20); });
  return turn.now();
}

void second_season(Turn& turn) {
  each(turn.draw("dresses", 2, [](const Style& style) { return lacks(style, 14); }),
       [&](int uid) { turn.fill_gap(uid, 14); });
  each(turn.draw("dresses", 2, [](const Style& style) { return reaches(style, 22); }),
       [&](int uid) { turn.open_gap(uid, 16); });
  each(turn.draw("dresses", 2), [&](int uid) { turn.widen(uid, 6, 24); });
  each(turn.draw("knitwear", 3, [](const Style& style) { return reaches(style, 4); }),
       [&](int uid) { turn.narrow(uid, 1, 3); });
  each(turn.draw("tops", 2, sold_out), [&](int uid) { turn.restock(uid); });
  each(turn.draw("tops", 2, on_shelf), [&](int uid) { turn.sell_out(uid); });
  each(turn.draw("knitwear", 1, marked_down), [&](int uid) { turn.change_markdown(uid, 40); });
  each(turn.draw("tops", 2), [&](int uid) { turn.drop(uid); });
  each(turn.draw("dresses", 2), [&](int uid) { turn.drop(uid); });
  for (const char* department : {"dresses", "dresses", "dresses", "tops", "knitwear"}) {
    turn.add(department);
  }
  each(turn.draw("tops", 3), [&](int uid) { turn.add_colour(uid); });
  each(turn.draw("dresses", 2, several_colours), [&](int uid) { turn.drop_colour(uid); });
  each(turn.draw("dresses", 5, not_marked_down), [&](int uid) { turn.reprice(uid, 108); });
  each(turn.draw("knitwear", 2, not_marked_down), [&](int uid) { turn.reprice(uid, 88); });
}

/// Takes out what the later capture did not look at.
void look_only_at(Turn& turn, const std::set<std::string>& departments) {
  std::vector<int> unseen;
  for (const Style& style : turn.now().styles) {
    if (!departments.contains(style.category)) unseen.push_back(style.uid);
  }
  each(unseen, [&](int uid) { turn.not_covered(uid); });
}

}  // namespace

Story pellorie() {
  Inventor inventor(house(), 4, 0x9E110E1E);
  const Range first = first_range(inventor);
  Turn turn(inventor, first);
  second_season(turn);
  const int unreadable = turn.draw("tops", 1).front();
  const Style without_name = turn.style(unreadable);
  turn.not_covered(unreadable);
  look_only_at(turn, {"dresses", "knitwear", "tops"});

  Dialect dialect;
  dialect.row_per_variant = false;
  Story story{house(), {}, {}};
  story.captures.push_back({.season = "AW25",
                            .date = "2025-09-08",
                            .range = on_sale(first, inventor.random(), 0),
                            .dialect = dialect,
                            .table = TableForm::json});
  story.captures.push_back({.season = "AW26",
                            .date = "2026-09-07",
                            .scope = "dresses,knitwear,tops",
                            .range = on_sale(turn.now(), inventor.random(), 0),
                            .dialect = dialect,
                            .nameless = {without_name}});
  story.comparisons = {{0, 1, turn.events()}};
  return story;
}

}  // namespace demo
