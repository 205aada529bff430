// One pair at a time. Everything that is put off stands in the address, so the way back, a bookmark
// and a desk that was closed in between lead to the same pair.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "schema/shop_name.h"
#include "tracker/app/link_desk.h"
#include "tracker/app/pair_sides.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/desk_sheet.h"
#include "tracker/desk/link_pages.h"
#include "tracker/desk/pair_view.h"
#include "tracker/desk/today_part.h"

namespace rangebook {
namespace {

/// More pairs than this are not put off: the address would be too long. The first come back then.
constexpr std::size_t kMostLater = 400;
constexpr std::size_t kMostSaid = 200;

std::vector<std::string> later_of(const DeskAsk& ask) {
  std::vector<std::string> later;
  const std::string& words = ask.said("later");
  for (std::size_t at = 0; at < words.size();) {
    const auto end = std::min(words.find(',', at), words.size());
    if (end > at) later.push_back(words.substr(at, end - at));
    at = end + 1;
  }
  if (later.size() > kMostLater) later.erase(later.begin(), later.end() - kMostLater);
  return later;
}

std::string joined_later(const std::vector<std::string>& later) {
  std::string words;
  for (const auto& each : later) words += (words.empty() ? "" : ",") + each;
  return words;
}

bool is_one_of(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// The pair that is named, else the best that was not put off; null where none is left.
const LinkCase* asked_pair(const LinkList& list, const DeskAsk& ask) {
  for (const LinkCase& pair : list.waiting) {
    if (pair.reference == ask.said("pair")) return &pair;
  }
  const auto later = later_of(ask);
  for (const LinkCase& pair : list.waiting) {
    if (!is_one_of(later, pair.reference)) return &pair;
  }
  return nullptr;
}

std::string pairs_wait(std::size_t count) {
  if (count == 0) return "nothing waits for a yes or no";
  return count == 1 ? "1 pair waits" : fmt::format("{} pairs wait", count);
}

std::string name_of(const LineGlimpse& line) {
  if (line.name.empty()) return line.code;
  return line.code.empty() ? line.name : fmt::format("{} ({})", line.name, line.code);
}

/// The evidence begins with a word of ours, in small letters.
std::string as_sentence(std::string text) {
  if (text.front() >= 'a' && text.front() <= 'z') {
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  }
  return text + '.';
}

std::string_view said_words(bool same) { return same ? "one line" : "two lines"; }
std::string_view said_word(bool same) { return same ? "yes" : "no"; }

/// `Maya dress (AB1) and Maia gown (XB7): one line.`
void said_sentence(HtmlWriter& html, const LinkCase& pair) {
  html.element("bdi", {}, name_of(pair.then));
  html.text(" and ");
  html.element("bdi", {}, name_of(pair.now));
  html.text(fmt::format(": {}.", said_words(pair.same.value_or(false))));
}

struct BackTo {
  std::string_view page;  ///< `said`: the list of what was said; empty: the next pair
  std::string later;
};

void back_form(HtmlWriter& html, const Desk& desk, const std::string& shop, const LinkCase& pair,
               const BackTo& to, const WriteHtml& submit) {
  post_form(html, desk, "/links/back", [&](HtmlWriter& form) {
    hidden_field(form, "shop", shop);
    hidden_field(form, "pair", pair.reference);
    hidden_field(form, "said", said_word(pair.same.value_or(false)));
    hidden_field(form, "page", to.page);
    hidden_field(form, "later", to.later);
    submit(form);
  });
}

/// One of the buttons that keys press; what it says where there are several in a form.
void key_button(HtmlWriter& html, std::string_view words, std::string_view key,
                std::string_view says = {}) {
  if (says.empty()) {
    html.element("button", {{"type", "submit"}, {"data-key", key}}, words);
  } else {
    html.element("button",
                 {{"type", "submit"}, {"data-key", key}, {"name", "says"}, {"value", says}}, words);
  }
}

/// What one shop is asked, read once for a page.
class ShopQuestions {
 public:
  ShopQuestions(const Desk& desk, const Book& book, const DeskAsk& ask)
      : desk_(desk),
        ask_(ask),
        shop_(ask.said("shop")),
        later_(later_of(ask)),
        lines_(book, shop_),
        list_(list_links(lines_)) {}

  const LinkList& list() const { return list_; }

  void question(HtmlWriter& html) {
    const LinkCase* pair = asked_pair(list_, ask_);
    if (pair) return one_pair(html, *pair);
    part(html, "pair", "All looked at", [&](HtmlWriter& matter) {
      if (list_.waiting.empty()) {
        matter.element("p", {},
                       "No pair of lines waits for your yes or no. New ones may come up with the "
                       "next capture.");
        return;
      }
      matter.element("p", {},
                     fmt::format("You put {} off.",
                                 list_.waiting.size() == 1
                                     ? "the last pair"
                                     : fmt::format("the {} that are left", list_.waiting.size())));
      const auto way = matter.in("p");
      link(matter, desk_address("/links", {{"shop", shop_, {}}}), "Go through them now");
    });
    if (!list_.decided.empty()) {
      const auto answers = html.in("div", {{"class", "answers"}});
      take_back(html);
    }
  }

  void last_said(HtmlWriter& html) const {
    if (list_.decided.empty()) return;
    const auto line = html.in("p", {{"class", "last"}});
    html.text("Last said: ");
    said_sentence(html, list_.decided.front());
    html.text(" ");
    link(html, desk_address("/links/said", {{"shop", shop_, {}}}), "All you said");
  }

 private:
  void one_pair(HtmlWriter& html, const LinkCase& pair) {
    part(html, "pair", "Are these one line?", [&](HtmlWriter& matter) {
      if (!pair.sentence.empty()) matter.element("p", {}, as_sentence(pair.sentence));
      matter.element("p", {{"class", "dates"}},
                     fmt::format("The evidence makes it {}% likely. Underlined words stand on one "
                                 "side only; prices and sizes are as captured on the days shown.",
                                 static_cast<int>(std::floor(pair.score * 100 + 1e-9))));
      write_pair(matter, pair, sides_of(lines_, pair));
      const auto answers = matter.in("div", {{"class", "answers"}});
      post_form(matter, desk_, "/links/answer", [&](HtmlWriter& form) {
        hidden_field(form, "shop", shop_);
        hidden_field(form, "pair", pair.reference);
        hidden_field(form, "later", joined_later(later_));
        key_button(form, "Yes, one line", "y", "yes");
        key_button(form, "No, two lines", "n", "no");
      });
      put_off(matter, pair);
      take_back(matter);
    });
  }

  void put_off(HtmlWriter& html, const LinkCase& pair) {
    auto later = later_;
    std::erase(later, pair.reference);
    later.push_back(pair.reference);
    ask_form(html, "/links", [&](HtmlWriter& form) {
      hidden_field(form, "shop", shop_);
      hidden_field(form, "later", joined_later(later));
      key_button(form, "Later", "l");
    });
  }

  void take_back(HtmlWriter& html) const {
    if (list_.decided.empty()) return;
    back_form(html, desk_, shop_, list_.decided.front(), {"", joined_later(later_)},
              [](HtmlWriter& form) { key_button(form, "Take the last one back", "u"); });
  }

  const Desk& desk_;
  const DeskAsk& ask_;
  const std::string shop_;
  const std::vector<std::string> later_;
  ShopLines lines_;
  LinkList list_;
};

DeskAnswer question_sheet(const Desk& desk, const Book& book, const DeskAsk& ask,
                          const std::string& wrong) {
  const auto shop = book.find_shop(ask.said("shop"));
  if (!shop || book.captures(shop->shop.slug).empty()) {
    const auto missing = find_capture(book, ask.said("shop"), "");
    return trouble_sheet(desk, 404, std::get<NotThere>(missing).message);
  }
  ShopQuestions questions(desk, book, ask);
  const SheetHead head{"/links", "Which line is which", std::string(shop_name(shop->shop)),
                       pairs_wait(questions.list().waiting.size())};
  return sheet(
      desk, head,
      [&](HtmlWriter& html) {
        alert(html, wrong);
        questions.question(html);
        questions.last_said(html);
      },
      wrong.empty() ? 200 : 409);
}

/// How many pairs wait in each shop.
DeskAnswer shops_sheet(const Desk& desk, const Book& book) {
  return sheet(desk, {"/links", "Which line is which", "Every shop"}, [&](HtmlWriter& html) {
    part(html, "shops", "What waits", [&](HtmlWriter& matter) {
      matter.element("p", {},
                     "Where a shop gives a line another name or code, the book links both or asks. "
                     "Each answer is kept and never asked again.");
      const auto list = matter.in("ul", {{"class", "shops"}});
      auto pairs = pairs_waiting(desk, book);
      for (const ShopRecord& record : book.shops()) {
        const std::size_t waiting = pairs[record.shop.slug];
        const auto item = matter.in("li");
        matter.element("h3", {}, shop_name(record.shop));
        matter.element("p", {{"class", "dates"}}, pairs_wait(waiting));
        const auto ways = matter.in("p", {{"class", "ways"}});
        const std::vector<DeskField> shop{{"shop", record.shop.slug, {}}};
        if (waiting > 0) link(matter, desk_address("/links", shop), "Settle them");
        link(matter, desk_address("/links/said", shop), "What you said");
      }
    });
  });
}

/// Where the work goes on; a pair that waits again is the next one.
std::string place_after(const DeskAsk& ask, const std::string& pair = {}) {
  if (ask.said("page") == "said") {
    return desk_address("/links/said", {{"shop", ask.said("shop"), {}}});
  }
  return desk_address("/links", {{"shop", ask.said("shop"), {}},
                                 {"later", joined_later(later_of(ask)), {}},
                                 {"pair", pair, {}}}) +
         "#pair";
}

}  // namespace

DeskAnswer links_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  if (ask.said("shop").empty()) return shops_sheet(desk, *book);
  return question_sheet(desk, *book, ask, "");
}

DeskAnswer answer_link(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  const std::string& says = ask.said("says");
  if (says != "yes" && says != "no") return question_sheet(desk, *book, ask, "Say yes or no.");
  const auto settled = settle_links(*book, ask.said("shop"), {ask.said("pair")}, says == "yes");
  if (const auto* refused = std::get_if<NotThere>(&settled)) {
    return question_sheet(desk, *book, ask, without_commands(refused->message));
  }
  return gone_to(place_after(ask));
}

DeskAnswer take_link_back(Desk& desk, const DeskAsk& ask) {
  auto book = desk.book();
  if (!book) return no_book(desk);
  const auto listed = list_links(*book, {ask.said("shop"), "", ""});
  if (const auto* missing = std::get_if<NotThere>(&listed)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  // A form that is sent twice must not take back what held before.
  for (const LinkCase& pair : std::get<LinkList>(listed).decided) {
    if (pair.reference != ask.said("pair")) continue;
    if (said_word(pair.same.value_or(false)) != ask.said("said")) break;
    const auto settled = unsettle_link(*book, ask.said("shop"), pair.reference);
    if (const auto* refused = std::get_if<NotThere>(&settled)) {
      return question_sheet(desk, *book, ask, without_commands(refused->message));
    }
    break;
  }
  return gone_to(place_after(ask, ask.said("pair")));
}

DeskAnswer links_said_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const std::string& slug = ask.said("shop");
  const auto listed = list_links(*book, {slug, "", ""});
  if (const auto* missing = std::get_if<NotThere>(&listed)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const auto& decided = std::get<LinkList>(listed).decided;
  const std::string name(shop_name(book->find_shop(slug)->shop));
  return sheet(desk, {"/links", "What you said", name}, [&](HtmlWriter& html) {
    part(html, "said", "Newest first", [&](HtmlWriter& matter) {
      if (decided.empty()) matter.element("p", {}, "You said nothing yet.");
      const auto list = matter.in("ul", {{"class", "shops"}});
      const std::size_t shown = std::min(decided.size(), kMostSaid);
      for (std::size_t i = 0; i < shown; ++i) {
        const auto item = matter.in("li");
        {
          const auto line = matter.in("p");
          said_sentence(matter, decided[i]);
        }
        back_form(matter, desk, slug, decided[i], {"said", ""}, [&](HtmlWriter& form) {
          const auto submit = form.in("button", {{"type", "submit"}});
          form.text("Take it back");
          form.element("span", {{"class", "hush"}}, ": " + name_of(decided[i].then));
        });
      }
      if (shown < decided.size()) {
        matter.element("p", {},
                       fmt::format("{} older ones are not shown.", decided.size() - shown));
      }
    });
    const auto way = html.in("p");
    link(html, desk_address("/links", {{"shop", slug, {}}}), "What waits");
  });
}

}  // namespace rangebook
