// A few of each, and the way to all of them.
#include "tracker/desk/today_part.h"

#include <fmt/format.h>

#include <algorithm>

#include "reports/pick_words.h"
#include "reports/wording.h"
#include "tracker/app/link_desk.h"
#include "tracker/desk/phrase_html.h"
#include "tracker/store/shop_state.h"

namespace rangebook {
namespace {

constexpr std::size_t kShown = 5;

std::string ago_words(const DueShop& shop, Day on) {
  if (!shop.last) return "nothing was captured yet";
  const auto days = (on - shop.last->on).count();
  return fmt::format("last captured on {}, {}", day_words(shop.last->on),
                     counted(static_cast<std::size_t>(days), "day ago", "days ago"));
}

void shop_due(HtmlWriter& html, const DueShop& shop, Day on) {
  const auto item = html.in("li");
  html.text("Go back to ");
  {
    const auto way = html.in("a", {{"href", desk_address("/add", {{"shop", shop.shop.slug, {}}})}});
    html.element("bdi", {}, shop_name(shop.shop));
  }
  html.text(": " + ago_words(shop, on));
}

void pick_due(HtmlWriter& html, const FollowedPick& followed) {
  const auto item = html.in("li");
  html.text("Look again at ");
  {
    const auto way = html.in("a", {{"href", fmt::format("/picks#pick-{}", followed.pick.number)}});
    write_phrase(html, pick_name(followed));
  }
  if (!followed.pick.theme.empty()) {
    html.text(" for ");
    html.element("bdi", {}, followed.pick.theme);
  }
  html.text(fmt::format(": due on {}", day_words(followed.pick.review.value())));
}

void pairs_item(HtmlWriter& html, const PairsWaiting& waiting) {
  if (!waiting) {
    const auto item = html.in("li");
    html.text("Say which line is which: ");
    return link(html, "/links", "see what waits");
  }
  std::size_t all = 0;
  for (const auto& [shop, pairs] : *waiting) all += pairs;
  if (all == 0) return;
  const std::string address = waiting->size() == 1
                                  ? desk_address("/links", {{"shop", waiting->begin()->first, {}}})
                                  : "/links";
  const auto item = html.in("li");
  html.text("Say which line is which: ");
  link(html, address, all == 1 ? "1 pair waits" : fmt::format("{} pairs wait", all));
}

/// How many due things are not listed; nothing when all are.
void rest_line(HtmlWriter& html, const DueList& due) {
  const std::size_t shops = due.shops.size() - std::min(due.shops.size(), kShown);
  const std::size_t picks = due.picks.size() - std::min(due.picks.size(), kShown);
  const auto line = html.in("p");
  if (shops > 0) html.text(counted(shops, "more shop is due. ", "more shops are due. "));
  if (picks > 0) html.text(counted(picks, "more pick is due. ", "more picks are due. "));
  link(html, "/due", "All that is due, and when");
}

}  // namespace

std::map<std::string, std::size_t> pairs_waiting(const Desk& desk, const Book& book) {
  std::map<std::string, std::size_t> waiting;
  for (const auto& shop : shop_states(book)) {  // slug, state
    const std::size_t pairs = desk.pairs().value(desk.book_path() + "\n" + shop.first, shop.second,
                                                 [&] { return links_waiting(book, shop.first); });
    if (pairs > 0) waiting[shop.first] = pairs;
  }
  return waiting;
}

void today_part(HtmlWriter& html, const DueList& due, const PairsWaiting& waiting) {
  part(html, "today", "Today", [&](HtmlWriter& matter) {
    if (due.shops.empty() && due.picks.empty()) {
      matter.element("p", {},
                     due.next ? fmt::format("Nothing is due before {}.", day_words(*due.next))
                              : "Nothing is due.");
    }
    if (!due.shops.empty() || !due.picks.empty() || !waiting || !waiting->empty()) {
      const auto list = matter.in("ul", {{"class", "plain"}});
      for (std::size_t i = 0; i < std::min(due.shops.size(), kShown); ++i) {
        shop_due(matter, due.shops[i], due.request.on);
      }
      for (std::size_t i = 0; i < std::min(due.picks.size(), kShown); ++i) {
        pick_due(matter, due.picks[i]);
      }
      pairs_item(matter, waiting);
    }
    rest_line(matter, due);
  });
}

}  // namespace rangebook
