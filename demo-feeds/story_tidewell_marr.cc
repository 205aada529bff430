// Tidewell Marr (invented): EUR, semicolons and decimal commas. A new ordering system gave every
// style another code in AW26; the barcodes stayed. Some styles were renamed on the way, and one
// old name was given to a new style.
#include "demo-feeds/story.h"
#include "demo-feeds/telling.h"

namespace demo {
namespace {

House house() {
  return {.slug = "tidewell-marr",
          .name = "Tidewell Marr",
          .country = "IE",
          .currency = "EUR",
          .code_prefix = "TM",
          .first_code = 4800,
          .price_percent = 115,
          .ninety_endings = true,
          .size_low = 10,
          .size_high = 24,
          .domain = "tidewell-marr"};
}

Range first_range(Inventor& inventor) {
  Turn turn(inventor, inventor.invent_range({{"dresses", 20},
                                             {"tops", 18},
                                             {"knitwear", 16},
                                             {"trousers", 14},
                                             {"skirts", 8},
                                             {"jackets-coats", 12}}));
  each(turn.draw("jackets-coats", 3), [&](int uid) { turn.mark_down(uid, 25); });
  each(turn.draw("dresses", 1, on_shelf), [&](int uid) { turn.sell_out(uid); });
  return turn.now();
}

/// `Maya wrap dress` becomes `Maya dress in viscose crepe`.
std::string longer_name(const Style& style) {
  const std::string given = style.name.substr(0, style.name.find(' '));
  const std::string garment = style.name.substr(style.name.rfind(' ') + 1);
  return given + " " + garment + " in " + style.fabric.noun;
}

/// The dropped style's name on a style that shares nothing else with it.
void reuse_name(Turn& turn) {
  const int old = turn.draw("dresses", 1, not_marked_down).front();
  const Style gone = turn.style(old);
  turn.drop(old);
  Style fresh = turn.inventor().invent("dresses");
  fresh.name = gone.name;
  fresh.fabric = turn.inventor().new_fabric(gone);
  fresh.full = turn.inventor().tidy(gone.full * 135 / 100);
  turn.add_style(fresh, "line-new");
}

void new_codes(Turn& turn) {
  for (Style& style : turn.now().styles) {
    const std::string number = std::to_string(70000 + style.uid * 37 % 9973);
    const std::string code = "W26-" + number;
    if (turn.then().find(style.uid) != nullptr) {
      turn.recode(style.uid, code);
    } else {
      style.code = code;
    }
  }
}

void second_season(Turn& turn) {
  each(turn.draw("", 7), [&](int uid) { turn.rename(uid, longer_name(turn.style(uid))); });
  reuse_name(turn);
  each(turn.draw("tops", 4), [&](int uid) { turn.drop(uid); });
  each(turn.draw("skirts", 3), [&](int uid) { turn.drop(uid); });
  for (const char* department :
       {"dresses", "dresses", "tops", "tops", "tops", "knitwear", "knitwear", "trousers"}) {
    turn.add(department);
  }
  each(turn.draw("", 8, not_marked_down), [&](int uid) { turn.reprice(uid, 106); });
  each(turn.draw("trousers", 2), [&](int uid) { turn.reprice(uid, 90); });
  each(turn.draw("knitwear", 3), [&](int uid) { turn.add_colour(uid); });
  each(turn.draw("knitwear", 2, several_colours), [&](int uid) { turn.drop_colour(uid); });
  each(turn.draw("jackets-coats", 2, marked_down), [&](int uid) { turn.end_markdown(uid); });
  each(turn.draw("dresses", 1, sold_out), [&](int uid) { turn.restock(uid); });
  each(turn.draw("tops", 2, on_shelf), [&](int uid) { turn.sell_out(uid); });
  new_codes(turn);
}

}  // namespace

Story tidewell_marr() {
  Inventor inventor(house(), 2, 0x71DE3E11);
  const Range first = first_range(inventor);
  Turn turn(inventor, first);
  second_season(turn);

  Dialect dialect;
  dialect.separator = ';';
  dialect.decimal_sign = ',';
  dialect.byte_order_mark = true;
  dialect.variant_columns = true;
  dialect.in_stock = "1";
  dialect.sold_out = "0";
  Story story{house(), {}, {}};
  story.captures.push_back({.season = "AW25",
                            .date = "2025-09-08",
                            .range = on_sale(first, inventor.random(), 5),
                            .dialect = dialect});
  dialect.american_grey = true;
  story.captures.push_back({.season = "AW26",
                            .date = "2026-09-07",
                            .range = on_sale(turn.now(), inventor.random(), 5),
                            .dialect = dialect,
                            .table = TableForm::xml});
  story.comparisons = {{0, 1, turn.events()}};
  return story;
}

}  // namespace demo
