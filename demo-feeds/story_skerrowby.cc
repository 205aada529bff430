// Skerrowby (invented): GBP, one row per variant, three seasons. In AW26 dresses and trousers
// reach further, skirts stop earlier, and two styles of AW24 come back.
#include "demo-feeds/story.h"
#include "demo-feeds/telling.h"

namespace demo {
namespace {

constexpr int kSoldOutPercent = 6;

House house() {
  return {.slug = "skerrowby",
          .name = "Skerrowby",
          .country = "GB",
          .currency = "GBP",
          .code_prefix = "SK",
          .first_code = 1040,
          .domain = "skerrowby"};
}

Range first_range(Inventor& inventor) {
  Turn turn(inventor, inventor.invent_range({{"dresses", 26},
                                             {"tops", 20},
                                             {"knitwear", 14},
                                             {"trousers", 18},
                                             {"skirts", 12},
                                             {"jackets-coats", 10},
                                             {"scarves", 6}}));
  each(turn.draw("dresses", 4), [&](int uid) { turn.add_fit(uid, Fit::petite, 6, 16); });
  each(turn.draw("trousers", 4), [&](int uid) { turn.add_fit(uid, Fit::tall, 10, 18); });
  each(turn.draw("tops", 2), [&](int uid) { turn.open_gap(uid, 12); });
  each(turn.draw("skirts", 1), [&](int uid) { turn.sell_out(uid); });
  return turn.now();
}

/// AW24 to AW25: a quiet year.
void second_season(Turn& turn) {
  each(turn.draw("dresses", 3), [&](int uid) { turn.drop(uid); });
  each(turn.draw("knitwear", 2), [&](int uid) { turn.drop(uid); });
  each(turn.draw("jackets-coats", 2), [&](int uid) { turn.drop(uid); });
  for (const char* department : {"dresses", "dresses", "dresses", "tops", "tops", "trousers",
                                 "trousers", "knitwear", "skirts"}) {
    turn.add(department);
  }
  each(turn.draw("", 9, [](const Style& style) { return style.full >= 4000; }),
       [&](int uid) { turn.reprice(uid, 105); });
  each(turn.draw("tops", 2, only_regular), [&](int uid) { turn.open_gap(uid, 14); });
  each(turn.draw("tops", 2, several_colours), [&](int uid) { turn.drop_colour(uid); });
  each(turn.draw("trousers", 2), [&](int uid) { turn.add_colour(uid); });
  each(turn.draw("jackets-coats", 2), [&](int uid) { turn.mark_down(uid, 20); });
  each(turn.draw("skirts", 2, on_shelf), [&](int uid) { turn.sell_out(uid); });
}

/// A style of AW24 that AW25 did not have, as it was.
void bring_back(Turn& turn, const Range& first, const std::string& department) {
  for (const Style& style : first.styles) {
    if (style.category != department || turn.now().find(style.uid) != nullptr) continue;
    return turn.add_style(style, "line-returned");
  }
}

void wider_sizes(Turn& turn) {
  const auto plain = [](const Style& style) { return only_regular(style); };
  each(turn.draw("dresses", 14, plain), [&](int uid) { turn.widen(uid, 6, 26); });
  each(turn.draw("trousers", 9, plain), [&](int uid) { turn.widen(uid, 8, 24); });
  each(turn.draw("skirts", 10, on_shelf), [&](int uid) {
    if (reaches(turn.style(uid), 20)) turn.narrow(uid, 8, 18);
  });
  each(turn.draw("dresses", 2, plain), [&](int uid) {  // three changes on one line
    turn.widen(uid, 8, 24);
    turn.add_fit(uid, Fit::petite, 8, 16);
    turn.reprice(uid, 107);
  });
  each(turn.draw("trousers", 1, [](const Style& style) { return has_fit(style, Fit::tall); }),
       [&](int uid) { turn.drop_fit(uid, Fit::tall); });
}

/// AW25 to AW26.
void third_season(Turn& turn, const Range& first) {
  each(turn.draw("skirts", 2, sold_out), [&](int uid) {
    turn.restock(uid);
    if (reaches(turn.style(uid), 20)) turn.narrow(uid, 8, 18);
  });
  each(turn.draw("skirts", 1, sold_out), [&](int uid) {
    if (reaches(turn.style(uid), 20)) turn.narrow(uid, 8, 18);
  });
  wider_sizes(turn);
  each(turn.draw("tops", 2, [](const Style& style) { return lacks(style, 14); }),
       [&](int uid) { turn.fill_gap(uid, 14); });
  each(turn.draw("tops", 1, [](const Style& style) { return lacks(style, 12); }),
       [&](int uid) { turn.fill_gap(uid, 12); });
  each(turn.draw("jackets-coats", 2, not_marked_down), [&](int uid) { turn.open_gap(uid, 16); });
  each(turn.draw("jackets-coats", 2, marked_down), [&](int uid) { turn.end_markdown(uid); });
  bring_back(turn, first, "dresses");
  bring_back(turn, first, "knitwear");
  each(turn.draw("dresses", 2), [&](int uid) { turn.drop(uid); });
  each(turn.draw("tops", 3), [&](int uid) { turn.drop(uid); });
  each(turn.draw("scarves", 1), [&](int uid) { turn.drop(uid); });
  for (const char* department :
       {"dresses", "dresses", "tops", "knitwear", "trousers", "jackets-coats", "scarves"}) {
    const int uid = turn.add(department);
    if (department == std::string("dresses")) turn.style(uid).sizes.insert({System::uk, {}, 22});
    turn.inventor().numbers().number_variants(turn.style(uid));
  }
  each(turn.draw("knitwear", 3), [&](int uid) { turn.add_colour(uid); });
  each(turn.draw("knitwear", 2, several_colours), [&](int uid) { turn.drop_colour(uid); });
  each(turn.draw("tops", 1), [&](int uid) { turn.move(uid, "dresses"); });
  each(turn.draw("tops", 2, on_shelf), [&](int uid) { turn.sell_out(uid); });
  each(turn.draw("knitwear", 3), [&](int uid) { turn.reprice(uid, 104); });
}

}  // namespace

Story skerrowby() {
  Inventor inventor(house(), 1, 0x5CE880B1);
  const Range first = first_range(inventor);
  Turn to_second(inventor, first);
  second_season(to_second);
  Turn to_third(inventor, to_second.now());
  third_season(to_third, first);

  Dialect dialect;
  dialect.variant_columns = true;
  Story story{house(), {}, {}};
  const auto capture = [&](const char* season, const char* date, const Range& range) {
    story.captures.push_back({.season = season,
                              .date = date,
                              .range = on_sale(range, inventor.random(), kSoldOutPercent),
                              .dialect = dialect});
  };
  capture("AW24", "2024-09-09", first);
  story.captures.back().table = TableForm::workbook;
  capture("AW25", "2025-09-08", to_second.now());
  dialect.wording = Wording::fibre_first;  // the same fabrics, worded the other way round
  capture("AW26", "2026-09-07", to_third.now());
  story.comparisons = {{0, 1, to_second.events()}, {1, 2, to_third.events()}};
  return story;
}

}  // namespace demo
