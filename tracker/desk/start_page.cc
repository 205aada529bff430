// Where a day begins: the shops, what was last seen of each, and what to do next.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <tuple>

#include "reports/brief.h"
#include "reports/brief_style.h"
#include "reports/wording.h"
#include "schema/error.h"
#include "schema/shop_name.h"
#include "tracker/app/commands.h"
#include "tracker/app/pipeline.h"
#include "tracker/desk/desk_script.h"
#include "tracker/desk/desk_sheet.h"
#include "tracker/desk/desk_style.h"
#include "tracker/desk/pages.h"
#include "tracker/desk/today_part.h"
#include "tracker/desk/upload_form.h"
#include "tracker/store/shop_state.h"
#include "tracker/store/terms_store.h"

namespace rangebook {
namespace {

/// Saying what changed compares two captures: of so many shops, those captured last. The others
/// show the way to it.
constexpr std::size_t kToldShops = 24;

/// Counting what waits reads the lists of all captures of a shop.
constexpr std::size_t kCountedShops = 60;

using CapturesByShop = std::map<std::string, std::vector<CaptureRecord>>;

/// What is said of a shop beside its captures.
struct ShopTelling {
  std::string news = {};  ///< what changed
  std::size_t pairs = 0;  ///< of lines that wait
};

std::string capture_words(const CaptureRecord& record) {
  return fmt::format("{}, seen {}: {}", record.info.season, day_words(record.info.on),
                     lines_words(static_cast<std::size_t>(record.lines)));
}

/// The first thing a brief would say.
std::string first_sentence(const Book& book, const std::string& shop) {
  const auto compared = run_comparison(book, {shop, "", ""});
  const auto* set = std::get_if<ChangeSet>(&compared);
  if (!set) return {};
  const auto sentences = top_sentences(make_brief(*set), 1);
  return sentences.empty() ? "" : sentences.front();
}

/// What changed at the shops that were captured last and can be compared, by shop.
std::map<std::string, std::string> news_of(const Desk& desk, const Book& book,
                                           const CapturesByShop& captures) {
  std::vector<std::pair<Day, std::string>> shops;
  for (const auto& [slug, records] : captures) {
    if (records.size() > 1) shops.emplace_back(records.back().info.on, slug);
  }
  std::sort(shops.begin(), shops.end(), [](const auto& a, const auto& b) {
    return std::tie(b.first, a.second) < std::tie(a.first, b.second);
  });
  if (shops.size() > kToldShops) shops.resize(kToldShops);
  const auto states = shop_states(book);
  std::map<std::string, std::string> news;
  for (const auto& shop : shops) {  // day, slug
    const std::string& slug = shop.second;
    news[slug] =
        desk.news().value(desk.book_path() + "\n" + slug, states.at(slug) + terms_state(book, slug),
                          [&] { return first_sentence(book, slug); });
  }
  return news;
}

void ways_of_shop(HtmlWriter& html, const Shop& shop, bool two_captures) {
  const auto list = html.in("ul", {{"class", "ways"}});
  const auto way = [&](std::string_view path, std::string_view words) {
    const auto item = html.in("li");
    link(html, desk_address(path, {{"shop", shop.slug, {}}}), words);
  };
  if (two_captures) {
    way("/brief", "What changed");
    way("/moves", "Change by change");
    way("/prices", "Prices");
  }
  way("/sizes", "Sizes");
  way("/lines", "Line by line");
  way("/terms", "Terms");
}

/// The book keeps no record of briefs that were read: a revisit is a capture that can be compared.
void revisit_line(HtmlWriter& html, const std::vector<CaptureRecord>& captures) {
  const CaptureInfo* from = season_before(captures, captures.back().info);
  html.element(
      "p", {{"class", "dates"}},
      from ? fmt::format("Last revisit: against {}, seen {}.", from->season, day_words(from->on))
           : "Not revisited yet: no capture of another season.");
}

void shop_item(HtmlWriter& html, const Shop& shop, const std::vector<CaptureRecord>& captures,
               const ShopTelling& telling) {
  const auto item = html.in("li");
  html.element("h3", {}, shop_name(shop));
  if (captures.empty()) {
    html.element("p", {{"class", "dates"}}, "Nothing was captured yet.");
    return;
  }
  const CaptureRecord& last = captures.back();
  html.element("p", {{"class", "dates"}}, capture_words(last));
  if (last.refused > 0) {
    html.element("p", {{"class", "dates"}},
                 fmt::format("{} of its rows or cells could not be read.", last.refused));
  }
  revisit_line(html, captures);
  if (!telling.news.empty()) html.element("p", {}, telling.news);
  if (telling.pairs > 0) {
    const auto line = html.in("p");
    link(html, desk_address("/links", {{"shop", shop.slug, {}}}),
         telling.pairs == 1 ? "1 pair of lines waits for a yes or no"
                            : fmt::format("{} pairs of lines wait for a yes or no", telling.pairs));
  }
  ways_of_shop(html, shop, captures.size() > 1);
}

void offer_demo(HtmlWriter& html, const Desk& desk) {
  if (desk.is_demo() || !desk.has_demo()) return;
  part(html, "demo", "Try it first", [&](HtmlWriter& matter) {
    matter.element("p", {},
                   "Four invented shops, two seasons each. They go into a book of their own; "
                   "yours stays as it is.");
    post_form(matter, desk, "/demo", [](HtmlWriter& form) { button(form, "Try the demo"); });
  });
}

}  // namespace

DeskAnswer start_page(Desk& desk, const DeskAsk& /*ask*/) {
  const auto book = desk.book();
  const auto shops = book ? book->shops() : std::vector<ShopRecord>{};
  const std::string under = shops.empty() ? "" : counted(shops.size(), "shop", "shops");
  return sheet(desk, {"/", "The desk", "Your shops", under}, [&](HtmlWriter& html) {
    CapturesByShop captures;
    std::map<std::string, std::string> news;
    PairsWaiting waiting;
    if (!shops.empty()) {
      captures = book->captures_of_all();
      news = news_of(desk, *book, captures);
      if (shops.size() <= kCountedShops) waiting = pairs_waiting(desk, *book);
      today_part(html, what_is_due(*book, captures, {today()}), waiting);
    }
    part(html, "shops", "The book", [&](HtmlWriter& matter) {
      if (shops.empty()) {
        matter.element("p", {},
                       "The book is empty. It begins with a shop and the first capture of its "
                       "range: pages you saved, or a table.");
        const auto way = matter.in("p", {{"class", "lead"}});
        link(matter, "/add", "Add the first capture");
        return;
      }
      const auto list = matter.in("ul", {{"class", "shops"}});
      for (const auto& record : shops) {
        const std::string& slug = record.shop.slug;
        shop_item(matter, record.shop, captures[slug],
                  {news[slug], waiting && waiting->contains(slug) ? waiting->at(slug) : 0});
      }
    });
    held_list(html, desk);
    offer_demo(html, desk);
  });
}

DeskAnswer style_sheet(Desk& /*desk*/, const DeskAsk& /*ask*/) {
  DeskAnswer answer;
  answer.type = "text/css; charset=utf-8";
  answer.body = fmt::format("{}{}", brief_style(), desk_style());
  return answer;
}

DeskAnswer script(Desk& /*desk*/, const DeskAsk& /*ask*/) {
  DeskAnswer answer;
  answer.type = "text/javascript; charset=utf-8";
  answer.body = desk_script();
  return answer;
}

DeskAnswer try_demo(Desk& desk, const DeskAsk& /*ask*/) {
  const std::unique_lock making(desk.demo_making(), std::try_to_lock);
  if (!making) return trouble_sheet(desk, 503, "The demo is being made. Wait a moment.");
  if (!desk.has_demo()) return trouble_sheet(desk, 404, "There are no feeds of the demo here.");
  if (!desk.is_demo()) {
    const std::string path = desk.demo_path();
    std::filesystem::create_directories(std::filesystem::absolute(path).parent_path());
    for (const char* suffix : {"", "-wal", "-shm"}) std::filesystem::remove(path + suffix);
    Book book = Book::open(path, true);
    take_demo(book, desk.feeds(), [](const Shop&, const CaptureReport&) {});
    desk.show_demo(true);
  }
  DeskAnswer answer;
  answer.go_to = "/";
  return answer;
}

DeskAnswer leave_demo(Desk& desk, const DeskAsk& /*ask*/) {
  desk.show_demo(false);
  DeskAnswer answer;
  answer.go_to = "/";
  return answer;
}

}  // namespace rangebook
