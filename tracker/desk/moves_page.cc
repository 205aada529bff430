// Every change between two captures, one a row, narrowed by what she asks for.
#include <fmt/format.h>

#include <algorithm>

#include "reports/wording.h"
#include "schema/shop_name.h"
#include "tracker/app/report_forms.h"
#include "tracker/desk/asked_shop.h"
#include "tracker/desk/file_formats.h"
#include "tracker/desk/pages.h"

namespace rangebook {
namespace {

constexpr std::size_t kMostRows = 400;

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(), [](char sign) {
    return sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign;
  });
  return text;
}

std::string name_of(const Change& change) {
  return change.line ? std::string(line_words(*change.line)) : category_words(change.category);
}

const std::string& category_of_change(const Change& change) {
  return change.line ? change.line->category : change.category;
}

std::string side_text(const Change& change, const std::optional<Fact>& side) {
  return plain_text(side_phrase(change.kind, side), false);
}

/// Every word stands somewhere in the line or on a side.
bool has_words(const Change& change, const std::string& words) {
  const std::string text = lower(fmt::format(
      "{} {} {} {} {}", name_of(change), change.line ? change.line->code : "",
      kind_words(change.kind), side_text(change, change.before), side_text(change, change.after)));
  std::size_t at = 0;
  while (at < words.size()) {
    const auto end = std::min(words.find(' ', at), words.size());
    if (text.find(words.substr(at, end - at)) == std::string::npos) return false;
    at = end + 1;
  }
  return true;
}

/// The set with only what is asked for: exports then say the same as the page.
ChangeSet narrowed(ChangeSet set, const DeskAsk& ask) {
  const auto kind = parse_change_kind(ask.said("kind"));
  const std::string& category = ask.said("category");
  const std::string words = lower(ask.said("words"));
  std::erase_if(set.changes, [&](const Change& change) {
    return (kind && change.kind != *kind) ||
           (!category.empty() && category_of_change(change) != category) ||
           !has_words(change, words);
  });
  return set;
}

void narrow_form(HtmlWriter& html, const Book& book, const ChangeSet& all, const DeskAsk& ask) {
  std::vector<Choice> kinds{{"", "every kind"}};
  for (const Change& change : all.changes) {
    const std::string name(to_string(change.kind));
    if (kinds.back().value != name) kinds.push_back({name, std::string(kind_words(change.kind))});
  }
  std::vector<Choice> categories{{"", "every category"}};
  for (const auto& summary : all.categories) {
    if (summary.category == "all") continue;
    categories.push_back({summary.category, category_words(summary.category)});
  }
  ask_form(html, "/moves", [&](HtmlWriter& form) {
    pair_fields(form, book, ask);
    choice_field(form, "kind", "Kind", kinds, ask.said("kind"));
    choice_field(form, "category", "Category", categories, ask.said("category"));
    text_field(form, "words", "Words", ask.said("words"), "name, code, colour, size or price");
    button(form, "Show");
  });
}

void subject(HtmlWriter& html, const ChangeSet& set, const Change& change) {
  const auto cell = html.in("th", {{"scope", "row"}});
  if (!change.line) return html.text(name_of(change));
  const std::string& word = change.line->code.empty() ? change.line->name : change.line->code;
  const auto line = html.in(
      "a", {{"href", desk_address("/line", {{"shop", set.shop.slug, {}}, {"line", word, {}}})}});
  html.element("bdi", {}, name_of(change));
}

void rows(HtmlWriter& html, const ChangeSet& set) {
  const std::size_t shown = std::min(set.changes.size(), kMostRows);
  wide_table(html,
             {"Changes",
              fmt::format("{} of {} changes", shown, set.changes.size()),
              {"Line", "What", "Then", "Now"}},
             [&](HtmlWriter& body) {
               for (std::size_t i = 0; i < shown; ++i) {
                 const Change& change = set.changes[i];
                 const auto row = body.in("tr");
                 subject(body, set, change);
                 body.element("td", {}, change_words(change.kind));
                 text_cell(body, side_text(change, change.before));
                 text_cell(body, side_text(change, change.after));
               }
             });
}

const std::vector<Choice> kForms{{"xlsx", "workbook"},
                                 {"csv", "CSV"},
                                 {"md", "Markdown"},
                                 {"text", "plain text"},
                                 {"json", "JSON"}};

void changes(HtmlWriter& html, const ChangeSet& set, const DeskAsk& ask) {
  if (set.changes.empty()) {
    html.element("p", {}, "Nothing here changed. Ask for less, or for every kind.");
    return;
  }
  rows(html, set);
  if (set.changes.size() > kMostRows) {
    html.element("p", {}, "The rest is in the files below, or narrow what is shown.");
  }
  keep_as(html, ask, kForms);
}

}  // namespace

DeskAnswer moves_page(Desk& desk, const DeskAsk& ask) {
  return compared_page(desk, ask, [&](const Book& book, const ChangeSet& all) {
    const ChangeSet set = narrowed(all, ask);
    const std::string format = asked_format(ask, kForms);
    if (!format.empty()) {
      return kept_file(changes_in(set, format), format, set.shop.slug + "-changes");
    }
    const std::string under =
        fmt::format("{}, {} against {}, {}", set.to.season, day_words(set.to.on), set.from.season,
                    day_words(set.from.on));
    return sheet(desk, {"/", "Change by change", std::string(shop_name(set.shop)), under},
                 [&](HtmlWriter& html) {
                   narrow_form(html, book, all, ask);
                   part(html, "changes", "Changes",
                        [&](HtmlWriter& matter) { changes(matter, set, ask); });
                 });
  });
}

}  // namespace rangebook
