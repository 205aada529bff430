// Each with a label of its own, as the shorter ones in desk_sheet.
#include "tracker/desk/form_fields.h"

#include <fmt/format.h>

#include <algorithm>

#include "tracker/app/cli_words.h"

namespace rangebook {

void long_text_field(HtmlWriter& html, std::string_view name, std::string_view label,
                     std::string_view value, std::string_view hint, std::size_t rows) {
  const auto field = html.in("div", {{"class", "field wide"}});
  html.element("label", {{"for", name}}, label);
  const std::string hint_id = fmt::format("{}-hint", name);
  {
    const auto area = html.in("textarea", {{"id", name},
                                           {"name", name},
                                           {"rows", std::to_string(rows)},
                                           {"aria-describedby", hint_id}});
    // A line break right behind the tag would be dropped (HTML, 13.1.2.5).
    if (value.starts_with('\n')) html.text("\n");
    html.text(value);
  }
  html.element("small", {{"id", hint_id}}, hint);
}

void offered_field(HtmlWriter& html, std::string_view name, std::string_view label,
                   std::string_view value, const std::vector<std::string>& offered,
                   std::string_view hint) {
  const auto field = html.in("div", {{"class", "field"}});
  html.element("label", {{"for", name}}, label);
  const std::string hint_id = fmt::format("{}-hint", name);
  const std::string offers_id = fmt::format("{}-offers", name);
  html.single("input", {{"type", "text"},
                        {"id", name},
                        {"name", name},
                        {"value", value},
                        {"list", offers_id},
                        {"aria-describedby", hint_id}});
  {
    const auto list = html.in("datalist", {{"id", offers_id}});
    for (const std::string& each : offered) html.element("option", {{"value", each}}, "");
  }
  html.element("small", {{"id", hint_id}}, hint);
}

void tick_fields(HtmlWriter& html, std::string_view name, std::string_view legend,
                 const std::vector<std::string>& words, const std::vector<std::string>& ticked) {
  const auto set = html.in("fieldset");
  html.element("legend", {}, legend);
  for (const std::string& word : words) {
    const auto label = html.in("label");
    if (std::find(ticked.begin(), ticked.end(), word) != ticked.end()) {
      html.single("input",
                  {{"type", "checkbox"}, {"name", name}, {"value", word}, {"checked", ""}});
    } else {
      html.single("input", {{"type", "checkbox"}, {"name", name}, {"value", word}});
    }
    html.text(" ");
    html.element("bdi", {}, word);
  }
}

std::optional<Day> asked_day(const DeskAsk& ask, std::string_view name, std::string_view label) {
  const std::string& word = ask.said(name);
  if (word.empty()) return std::nullopt;
  if (const auto day = parse_day(word)) return day;
  throw UsageError{fmt::format("{}: \"{}\" is no date; write it as 2026-09-01.", label, word)};
}

}  // namespace rangebook
