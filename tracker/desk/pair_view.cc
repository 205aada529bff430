// Row by row the same facts of both lines, so that the eye can go across.
#include "tracker/desk/pair_view.h"

#include <fmt/format.h>

#include <string>
#include <vector>

#include "reports/seen_line.h"
#include "reports/wording.h"
#include "tracker/desk/word_marks.h"

namespace rangebook {
namespace {

/// A fact of both lines. Codes and captures always differ: marking them would say nothing.
struct Fact2 {
  std::string_view label;
  std::string then;
  std::string now;
  bool marked = true;
};

std::string price_text(const std::optional<SeenLine>& line, const LineGlimpse& glimpse) {
  if (!line || !line->price) return glimpse.price ? money_words(*glimpse.price) : "";
  std::string text = span_words(*line->price);
  if (line->marked_down > 0 && line->full_price) {
    text += ", marked down from " + span_words(*line->full_price);
  }
  return text;
}

std::string capture_text(const LineGlimpse& line) {
  if (!line.seen) return "in no capture any more";
  return fmt::format("{}, seen {}", line.seen->season, day_words(line.seen->on));
}

std::string document_text(const LineGlimpse& line) {
  if (!line.seen || !line.seen->line) return line.seen ? line.seen->document : "";
  return fmt::format("{}, line {}", line.seen->document, *line.seen->line);
}

std::vector<Fact2> facts_of(const LinkCase& pair, const PairSides& sides) {
  const auto text = [](const std::optional<SeenLine>& line, auto words) {
    return line ? std::string(words(*line)) : std::string();
  };
  const auto both = [&](std::string_view label, auto words) {
    return Fact2{label, text(sides.then, words), text(sides.now, words)};
  };
  return {
      {"Code", pair.then.code, pair.now.code, false},
      {"Price", price_text(sides.then, pair.then), price_text(sides.now, pair.now)},
      both("Sizes", [](const SeenLine& line) { return sizes_words(line); }),
      both("Colours", [](const SeenLine& line) { return colours_words(line); }),
      both("Fabric", [](const SeenLine& line) { return line.card.composition; }),
      both("Category", [](const SeenLine& line) { return category_words(line.category); }),
      {"From", document_text(pair.then), document_text(pair.now), false},
  };
}

void words(HtmlWriter& html, const std::vector<MarkedWords>& runs) {
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (i > 0) html.text(" ");
    if (!runs[i].differs) {
      html.element("bdi", {}, runs[i].text);
      continue;
    }
    const auto mark = html.in("mark");
    html.element("span", {{"class", "hush"}}, "differs: ");
    html.element("bdi", {}, runs[i].text);
  }
}

/// One side of a fact. What only one side states is no difference.
void side_of_fact(HtmlWriter& html, const Fact2& fact, bool is_then) {
  const std::string& text = is_then ? fact.then : fact.now;
  html.element("dt", {}, fact.label);
  const auto value = html.in("dd");
  if (text.empty()) {
    html.element("span", {{"class", "dates"}}, "not stated");
  } else if (!fact.marked || fact.then.empty() || fact.now.empty()) {
    html.element("bdi", {}, text);
  } else {
    const auto marks = marked_words(fact.then, fact.now);
    words(html, is_then ? marks.first : marks.second);
  }
}

void side(HtmlWriter& html, const LinkCase& pair, const std::vector<Fact2>& facts, bool is_then) {
  const auto box = html.in("div");
  const LineGlimpse& line = is_then ? pair.then : pair.now;
  html.element("h3", {}, capture_text(line));
  {
    const auto name = html.in("p", {{"class", "says"}});
    const auto marks = marked_words(pair.then.name, pair.now.name);
    if (line.name.empty()) html.text("no name stated");
    words(html, is_then ? marks.first : marks.second);
  }
  const auto list = html.in("dl", {{"class", "facts"}});
  for (const Fact2& fact : facts) {
    if (!fact.then.empty() || !fact.now.empty()) side_of_fact(html, fact, is_then);
  }
}

}  // namespace

void write_pair(HtmlWriter& html, const LinkCase& pair, const PairSides& sides) {
  const auto facts = facts_of(pair, sides);
  const auto two = html.in("div", {{"class", "two"}});
  side(html, pair, facts, true);
  side(html, pair, facts, false);
}

}  // namespace rangebook
