// The reports as pages: each asks what the command of the same name asks, and gives the same
// answer.
#include <fmt/format.h>

#include "reports/brief_formats.h"
#include "reports/history_report.h"
#include "reports/link_list.h"
#include "reports/order_report.h"
#include "reports/price_report.h"
#include "reports/size_report_forms.h"
#include "tracker/app/cli_words.h"
#include "tracker/app/history_desk.h"
#include "tracker/app/order_words.h"
#include "tracker/app/report_forms.h"
#include "tracker/app/scope_words.h"
#include "tracker/app/terms_desk.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/file_formats.h"
#include "tracker/desk/pages.h"
#include "tracker/size_report.h"
#include "tracker/store/shop_state.h"

namespace rangebook {
namespace {

/// The slug of the category that is asked for; throws UsageError.
std::string asked_category(const DeskAsk& ask) {
  Words words;
  words.category = ask.said("category");
  return category_of(words);
}

void category_field(HtmlWriter& html, const DeskAsk& ask) {
  text_field(html, "category", "Category", ask.said("category"), "such as dresses; empty: all");
}

/// `69, 45.50 swimwear:30` as separate words.
std::vector<std::string> words_in(const std::string& text) {
  std::vector<std::string> words;
  std::string word;
  for (const char sign : text + " ") {
    if (sign != ' ' && sign != '\t' && sign != ';') {
      word += sign;
    } else if (!word.empty()) {
      words.push_back(std::move(word));
      word.clear();
    }
  }
  return words;
}

/// An empty form, or one whose words were not understood, with what is wrong.
DeskAnswer form_sheet(const Desk& desk, const SheetHead& head, const WriteHtml& form,
                      const std::string& wrong) {
  return sheet(
      desk, head,
      [&](HtmlWriter& html) {
        form(html);
        alert(html, without_options(wrong));
      },
      wrong.empty() ? 200 : 400);
}

OrderWords order_words(const DeskAsk& ask) {
  OrderWords words;
  words.currency = ask.said("currency");
  words.keep = words_in(ask.said("keep"));
  words.back = words_in(ask.said("back"));
  words.region = ask.said("region");
  words.bought = ask.said("bought");
  if (!ask.said("delivery").empty()) words.delivery = ask.said("delivery");
  return words;
}

void order_form(HtmlWriter& html, const DeskAsk& ask) {
  ask_form(html, "/order", [&](HtmlWriter& form) {
    text_field(form, "currency", "Currency", ask.said("currency"), "such as GBP");
    text_field(form, "keep", "Prices to keep", ask.said("keep"),
               "such as 69 45.50, with spaces between");
    text_field(form, "back", "Prices to send back", ask.said("back"), "sale:20 for a sale item");
    text_field(form, "region", "Country it goes to", ask.said("region"),
               "two letters; empty: the shop's own");
    text_field(form, "bought", "Day of purchase", ask.said("bought"), "empty: today", "date");
    std::vector<Choice> wishes;
    for (const auto& name : delivery_wish_names()) wishes.push_back({name, name});
    choice_field(form, "delivery", "Delivery", wishes,
                 ask.said("delivery").empty() ? "home" : ask.said("delivery"));
    button(form, "Work it out");
  });
}

DeskAnswer order_answer(const Desk& desk, const DeskAsk& ask, const Order& order,
                        const SheetHead& head) {
  const auto book = desk.book();
  const auto form = [&ask](HtmlWriter& html) { order_form(html, ask); };
  if (!book) return no_book(desk);
  const auto compared = compare_terms(*book, {}, order, today(), {});
  if (const auto* missing = std::get_if<NotThere>(&compared)) {
    return form_sheet(desk, head, form, missing->message);
  }
  const auto& comparison = std::get<OrderComparison>(compared);
  const std::string format = asked_format(ask, paper_and_csv());
  if (!format.empty()) return kept_file(order_in(comparison, as_file(format)), format, "order");
  ReportPage page = order_page(comparison);
  page.invented = desk.is_demo();
  return report_sheet(desk, "/order", page, [&](HtmlWriter& html) {
    order_form(html, ask);
    keep_as(html, ask, paper_and_csv());
  });
}

/// Shop by shop, so that a new capture makes only its own shop be read again.
ReachingReport reaching_of(const Desk& desk, const Book& book, const ReachingRequest& request) {
  const std::string question =
      fmt::format("{}\n{}\n{}\n{}\n{}\n{}\n{}\n", desk.book_path(), request.size.label,
                  to_string(request.size.system), to_string(request.size.fit), request.size.low,
                  request.size.high, request.category);
  const auto states = shop_states(book);
  return run_reaching(book, request, [&](const Shop& shop) {
    const auto state = states.find(shop.slug);
    if (state == states.end()) return shop_reaching(book, shop, request);  // added since
    return desk.reaching().value(question + shop.slug, state->second,
                                 [&] { return shop_reaching(book, shop, request); });
  });
}

void reach_form(HtmlWriter& html, const DeskAsk& ask) {
  ask_form(html, "/reach", [&](HtmlWriter& form) {
    text_field(form, "size", "Size", ask.said("size"), "as on the label, such as 22");
    std::vector<Choice> systems{{"", "as in most shops"}};
    for (const auto& name : size_system_names()) systems.push_back({name, name});
    choice_field(form, "system", "Size system", systems, ask.said("system"));
    category_field(form, ask);
    button(form, "Look");
  });
}

/// What can be done with a line: keep it, and settle the pairs it stands in.
void ways_of_line(HtmlWriter& html, const LineHistory& history) {
  const auto ways = html.in("p", {{"class", "ways"}});
  link(html,
       desk_address("/picks/keep",
                    {{"shop", history.shop.slug, {}}, {"line", history.reference, {}}}),
       "Keep it as a pick");
  for (const LinkCase& pair : history.waiting) {
    link(html,
         desk_address("/links", {{"shop", history.shop.slug, {}}, {"pair", pair.reference, {}}}),
         fmt::format("Is it one line with {}?",
                     line_phrase(pair.then.id == history.id ? pair.now : pair.then)));
  }
}

}  // namespace

DeskAnswer brief_page(Desk& desk, const DeskAsk& ask) {
  return compared_page(desk, ask, [&](const Book& book, const ChangeSet& set) {
    BriefOptions extras = run_brief_extras(book, set);
    extras.invented = desk.is_demo();
    Brief brief = make_brief(set, extras);
    const std::string format = asked_format(ask, paper_formats());
    if (!format.empty()) {
      return kept_file(brief_in(std::move(brief), as_file(format)), format, set.shop.slug);
    }
    return report_sheet(desk, "/", page_of(std::move(brief)), [&](HtmlWriter& html) {
      ask_form(html, "/brief", [&](HtmlWriter& form) {
        pair_fields(form, book, ask);
        button(form, "Compare");
      });
      keep_as(html, ask, paper_formats());
    });
  });
}

DeskAnswer prices_page(Desk& desk, const DeskAsk& ask) {
  return compared_page(desk, ask, [&](const Book& book, const ChangeSet& set) {
    const PriceReportOptions options{asked_category(ask), desk.is_demo()};
    const std::string format = asked_format(ask, paper_and_csv());
    if (!format.empty()) {
      return kept_file(prices_in(set, options, as_file(format)), format, set.shop.slug + "-prices");
    }
    return report_sheet(desk, "/", price_page(set, options), [&](HtmlWriter& html) {
      ask_form(html, "/prices", [&](HtmlWriter& form) {
        pair_fields(form, book, ask);
        category_field(form, ask);
        button(form, "Show");
      });
      keep_as(html, ask, paper_and_csv());
    });
  });
}

DeskAnswer sizes_of_shop_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const auto sized = run_sizes(*book, {ask.said("shop"), ask.said("capture"), asked_category(ask)});
  if (const auto* missing = std::get_if<NotThere>(&sized)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const auto& report = std::get<SizeReport>(sized);
  const std::string format = asked_format(ask, paper_and_csv());
  if (!format.empty()) {
    return kept_file(sizes_in(report, as_file(format)), format, ask.said("shop") + "-sizes");
  }
  ReportPage page = sizes_page(report);
  page.invented = desk.is_demo();
  return report_sheet(desk, "/", page, [&](HtmlWriter& html) {
    ask_form(html, "/sizes", [&](HtmlWriter& form) {
      hidden_field(form, "shop", ask.said("shop"));
      choice_field(form, "capture", "Capture",
                   capture_choices(*book, ask.said("shop"), "the latest"), ask.said("capture"));
      category_field(form, ask);
      button(form, "Show");
    });
    keep_as(html, ask, paper_and_csv());
  });
}

DeskAnswer reach_page(Desk& desk, const DeskAsk& ask) {
  const SheetHead head{"/reach", "Across all shops", "Who reaches a size?"};
  const auto form = [&ask](HtmlWriter& html) { reach_form(html, ask); };
  if (ask.said("size").empty()) return form_sheet(desk, head, form, "");
  const auto book = desk.book();
  if (!book) return no_book(desk);
  try {
    const std::string category = asked_category(ask);
    const SizeSystem system = ask.said("system").empty()
                                  ? usual_system(*book)
                                  : system_of("the system", ask.said("system"));
    const auto size = size_in(ask.said("size"), system);
    if (!size) {
      return form_sheet(desk, head, form,
                        fmt::format("\"{}\" is no size of {}. Say what the number means.",
                                    ask.said("size"), to_string(system)));
    }
    const auto report = reaching_of(desk, *book, {*size, category.empty() ? "all" : category});
    const std::string format = asked_format(ask, paper_and_csv());
    if (!format.empty()) return kept_file(reaching_in(report, as_file(format)), format, "reach");
    ReportPage page = reaching_page(report);
    page.invented = desk.is_demo();
    return report_sheet(desk, "/reach", page, [&](HtmlWriter& html) {
      reach_form(html, ask);
      keep_as(html, ask, paper_and_csv());
    });
  } catch (const UsageError& wrong) {
    return form_sheet(desk, head, form, wrong.message);
  }
}

DeskAnswer line_page(Desk& desk, const DeskAsk& ask) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const auto found = line_history(*book, ask.said("shop"), ask.said("line"));
  if (const auto* missing = std::get_if<NotThere>(&found)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  const auto& history = std::get<LineHistory>(found);
  const std::string format = asked_format(ask, paper_and_csv());
  if (!format.empty()) {
    return kept_file(history_in(history, as_file(format)), format, "line-" + history.reference);
  }
  ReportPage page = history_page(history);
  page.invented = desk.is_demo();
  return report_sheet(desk, "/", page, [&](HtmlWriter& html) {
    ways_of_line(html, history);
    keep_as(html, ask, paper_and_csv());
  });
}

DeskAnswer order_cost_page(Desk& desk, const DeskAsk& ask) {
  const SheetHead head{"/order", "Across all shops", "What would an order cost?"};
  const auto form = [&ask](HtmlWriter& html) { order_form(html, ask); };
  const bool asks =
      !(ask.said("currency") + ask.said("keep") + ask.said("back") + ask.said("bought")).empty();
  if (!asks) return form_sheet(desk, head, form, "");
  try {
    return order_answer(desk, ask, order_of(order_words(ask)), head);
  } catch (const UsageError& wrong) {
    return form_sheet(desk, head, form, wrong.message);
  }
}

}  // namespace rangebook
