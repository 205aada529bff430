// The shop of a page and its captures.
#include "tracker/desk/asked_shop.h"

#include <fmt/format.h>

#include <algorithm>

#include "reports/wording.h"
#include "tracker/app/pipeline.h"

namespace rangebook {

CompareRequest comparison_of(const DeskAsk& ask) {
  return {ask.said("shop"), ask.said("from"), ask.said("to")};
}

std::vector<Choice> capture_choices(const Book& book, const std::string& shop,
                                    const std::string& usual) {
  std::vector<Choice> choices{{"", usual}};
  const auto captures = book.captures(shop);
  for (auto record = captures.rbegin(); record != captures.rend(); ++record) {
    const CaptureInfo& info = record->info;
    choices.push_back(
        {std::to_string(info.id), fmt::format("{}, {}", info.season, day_words(info.on))});
  }
  return choices;
}

void pair_fields(HtmlWriter& html, const Book& book, const DeskAsk& ask) {
  const std::string& shop = ask.said("shop");
  hidden_field(html, "shop", shop);
  choice_field(html, "from", "Then", capture_choices(book, shop, "the season before"),
               ask.said("from"));
  choice_field(html, "to", "Now", capture_choices(book, shop, "the latest"), ask.said("to"));
}

DeskAnswer compared_page(
    const Desk& desk, const DeskAsk& ask,
    const std::function<DeskAnswer(const Book& book, const ChangeSet& set)>& page) {
  const auto book = desk.book();
  if (!book) return no_book(desk);
  const auto compared = run_comparison(*book, comparison_of(ask));
  if (const auto* missing = std::get_if<NotThere>(&compared)) {
    return trouble_sheet(desk, 404, missing->message);
  }
  return page(*book, std::get<ChangeSet>(compared));
}

DeskAnswer no_book(const Desk& desk) {
  return trouble_sheet(desk, 404, "The book is empty: there is no shop in it yet.");
}

}  // namespace rangebook
