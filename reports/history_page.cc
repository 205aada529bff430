// The history of a line for reading: the news first, then capture by capture.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "reports/brief_sources.h"
#include "reports/history_report.h"
#include "reports/link_list.h"
#include "reports/seen_line.h"
#include "reports/wording.h"
#include "schema/shop_name.h"

namespace rangebook {
namespace {

const HistoryEntry& first_seen(const LineHistory& history) { return history.entries.front(); }

const HistoryEntry& last_seen(const LineHistory& history) {
  return *std::find_if(history.entries.rbegin(), history.entries.rend(),
                       [](const HistoryEntry& entry) { return entry.line.has_value(); });
}

std::string_view presence_words(Presence presence) {
  switch (presence) {
    case Presence::seen:
      return "seen";
    case Presence::absent:
      return "not there";
    case Presence::not_looked:
      return "not looked at";
    case Presence::refused:
      return "its row could not be read";
  }
  return {};
}

/// One row of what stayed until something else was seen.
class Stays {
 public:
  explicit Stays(std::string label) { row_.label = std::move(label); }
  void add(Day from, std::string words) {
    if (words.empty() || (!row_.stays.empty() && row_.stays.back().words == words)) return;
    row_.stays.push_back({from, std::move(words)});
  }
  bool moved() const { return row_.stays.size() > 1; }
  const TimelineChart::Row& row() const { return row_; }

 private:
  TimelineChart::Row row_;
};

std::string colour_count(const SeenLine& line) {
  return line.colours.empty() ? "" : counted(line.colours.size(), "colour", "colours");
}

/// What was seen of a line from which capture on; nothing of a single capture.
std::optional<Chart> history_chart(const LineHistory& history) {
  if (history.entries.size() < 2) return {};
  Stays seen("Presence");
  Stays price("Price without markdown");
  Stays sizes("Sizes");
  Stays colours("Colours");
  for (const HistoryEntry& entry : history.entries) {
    const Day on = entry.capture.on;
    seen.add(on, std::string(presence_words(entry.presence)));
    if (!entry.line) continue;
    if (entry.line->full_price) price.add(on, span_words(*entry.line->full_price));
    sizes.add(on, sizes_words(*entry.line));
    colours.add(on, colour_count(*entry.line));
  }
  TimelineChart chart;
  chart.last = history.entries.back().capture.on;
  Phrase moved;
  for (const Stays* each : {&seen, &price, &sizes, &colours}) {
    if (each->row().stays.empty()) continue;
    chart.rows.push_back(each->row());
    if (each->moved()) moved.words(moved.empty() ? "" : ", ").words(each->row().label);
  }
  Phrase finding;
  finding.words(moved.empty() ? "Nothing shown here moved" : "What moved: ").append(moved);
  return Chart{std::move(finding.words(".")), std::move(chart)};
}

class HistoryPage {
 public:
  explicit HistoryPage(const LineHistory& history)
      : history_(history),
        sources_(history.entries.front().capture, history.entries.back().capture) {}

  ReportPage make() {
    ReportPage page;
    const SeenLine& now = *last_seen(history_).line;
    const std::string name = now.card.name.empty() ? now.card.line_code : now.card.name;
    page.kind = "Line history";
    page.skip = "Skip to the history";
    page.title = fmt::format("{}: {}", shop_name(history_.shop), name);
    page.heading.name(name);
    page.under.name(shop_name(history_.shop));
    if (!now.card.line_code.empty()) page.under.words(", code ").code(now.card.line_code);
    page.under.words(", reference ").code(history_.reference);
    page.dates = dates();
    page.captured = page.dates;
    page.made = history_.entries.back().capture.on;
    page.headlines = headlines();
    add(page.sections, captures_section());
    add(page.sections, changes_section());
    add(page.sections, identity_section());
    add(page.sections, questions_section());
    page.sources = sources_.take();
    page.cautions = report_cautions(false);
    return page;
  }

 private:
  static void add(std::vector<BriefSection>& sections, BriefSection section) {
    if (!section.tables.empty() || !section.paragraphs.empty()) {
      sections.push_back(std::move(section));
    }
  }

  Phrase dates() const {
    const CaptureInfo& first = first_seen(history_).capture;
    const CaptureInfo& last = last_seen(history_).capture;
    Phrase phrase;
    phrase.words("first seen ").name(first.season).words(", ").day(first.on);
    return phrase.words("; last seen ").name(last.season).words(", ").day(last.on);
  }

  std::size_t note(const HistoryEntry& entry) { return sources_.number(entry.line->seen); }

  std::vector<Headline> headlines() {
    std::vector<Headline> all{{Theme::identity, presence_sentence()}};
    const HistoryEntry& first = first_seen(history_);
    const HistoryEntry& last = last_seen(history_);
    if (&first != &last) {
      add_move(all, Theme::prices, "Price without markdown", &SeenLine::full_price);
      const std::string then = sizes_words(*first.line);
      const std::string now = sizes_words(*last.line);
      if (!then.empty() && !now.empty()) {
        all.push_back({Theme::sizes, sentence("Sizes", then, now)});
      }
    }
    if (!history_.waiting.empty()) {
      Phrase phrase;
      phrase.figure(counted(history_.waiting.size(), "question waits", "questions wait"));
      all.push_back({Theme::identity, phrase.words(" for a yes or no about this line.")});
    }
    return all;
  }

  Phrase presence_sentence() {
    const auto count = [this](Presence presence) {
      return static_cast<std::size_t>(
          std::count_if(history_.entries.begin(), history_.entries.end(),
                        [&](const HistoryEntry& entry) { return entry.presence == presence; }));
    };
    Phrase phrase;
    phrase.words("Seen in ").count(count(Presence::seen)).words(" of ");
    phrase.figure(counted(history_.entries.size(), "capture", "captures"));
    phrase.words(" since then");
    for (const Presence other : {Presence::absent, Presence::not_looked, Presence::refused}) {
      if (count(other) == 0) continue;
      phrase.words(fmt::format("; {} in ", presence_words(other)));
      phrase.count(count(other));
    }
    return phrase.words(".");
  }

  Phrase sentence(std::string_view what, const std::string& then, const std::string& now) {
    const HistoryEntry& first = first_seen(history_);
    const HistoryEntry& last = last_seen(history_);
    Phrase phrase;
    phrase.words(what).words(": ").figure(then).words(" in ").name(first.capture.season);
    phrase.note(note(first));
    if (then == now)
      return phrase.words(", and still in ").name(last.capture.season).note(note(last)).words(".");
    return phrase.words(", ")
        .figure(now)
        .words(" in ")
        .name(last.capture.season)
        .note(note(last))
        .words(".");
  }

  void add_move(std::vector<Headline>& all, Theme theme, std::string_view what,
                std::optional<PriceSpan> SeenLine::*span) {
    const auto& then = (*first_seen(history_).line).*span;
    const auto& now = (*last_seen(history_).line).*span;
    if (then && now) all.push_back({theme, sentence(what, span_words(*then), span_words(*now))});
  }

  Phrase capture_cell(const HistoryEntry& entry) {
    Phrase cell;
    cell.name(entry.capture.season).words(", ").day(entry.capture.on);
    if (entry.line) cell.note(note(entry));
    return cell;
  }

  BriefSection captures_section() {
    BriefSection section{"captures", "Capture by capture", {}, {}};
    BriefTable names{"names",
                     "Names, codes and fabric",
                     {{"capture", "Capture", false},
                      {"name", "Name", false},
                      {"code", "Code", false},
                      {"category", "Category", false},
                      {"fabric", "Fabric", false}},
                     {},
                     {},
                     false};
    BriefTable offers{"offers",
                      "Prices, sizes and colours",
                      {{"capture", "Capture", false},
                       {"price", "Price", true},
                       {"full", "Without markdown", true},
                       {"sizes", "Sizes", false},
                       {"colours", "Colours", false},
                       {"stock", "In stock", true}},
                      {},
                      {},
                      false};
    for (const HistoryEntry& entry : history_.entries) {
      names.rows.push_back(name_row(entry));
      offers.rows.push_back(offer_row(entry));
    }
    if (auto chart = history_chart(history_)) offers.charts.push_back(std::move(*chart));
    section.tables = {std::move(names), std::move(offers)};
    return section;
  }

  std::vector<Phrase> name_row(const HistoryEntry& entry) {
    std::vector<Phrase> row{capture_cell(entry)};
    row.resize(5);
    if (!entry.line) {
      row[1].words(presence_words(entry.presence));
      return row;
    }
    const SeenLine& line = *entry.line;
    row[1].name(line.card.name);
    row[2].code(line.card.line_code);
    row[3].name(category_words(line.category));
    row[4].name(line.card.composition);
    return row;
  }

  std::vector<Phrase> offer_row(const HistoryEntry& entry) {
    std::vector<Phrase> row{capture_cell(entry)};
    row.resize(6);
    if (!entry.line) {
      row[1].words(presence_words(entry.presence));
      return row;
    }
    const SeenLine& line = *entry.line;
    if (line.price) row[1].figure(span_words(*line.price));
    if (line.marked_down > 0) row[1].words(" marked down");
    if (line.full_price) row[2].figure(span_words(*line.full_price));
    row[3].figure(sizes_words(line));
    row[4].name(colours_words(line));
    if (line.stock.offered > 0) {
      row[5].figure(fmt::format("{} of {}", line.stock.in_stock, line.stock.offered));
    }
    return row;
  }

  BriefSection changes_section() {
    BriefSection section{"changes", "What changed", {}, {}};
    BriefTable table{"changes",
                     "Each change since the line was last seen",
                     {{"by", "By", false},
                      {"what", "What", false},
                      {"then", "Then", false},
                      {"now", "Now", false}},
                     {},
                     {},
                     false};
    for (const HistoryEntry& entry : history_.entries) {
      for (const Change& change : entry.changes) {
        Phrase then = side_phrase(change.kind, change.before);
        Phrase now = side_phrase(change.kind, change.after);
        sources_.cite(then, change.evidence.before);
        sources_.cite(now, change.evidence.after);
        table.rows.push_back({Phrase{}.name(entry.capture.season),
                              Phrase{}.words(change_words(change.kind)), std::move(then),
                              std::move(now)});
      }
    }
    if (table.rows.empty()) {
      section.paragraphs.push_back(Phrase{}.words("Nothing changed between its sightings."));
    } else {
      section.tables.push_back(std::move(table));
    }
    return section;
  }

  BriefSection identity_section() {
    BriefSection section{"same-line", "Why it is one line", {}, {}};
    BriefTable table{"links",
                     "Each sighting with the one before it",
                     {{"capture", "Capture", false}, {"why", "Why", false}},
                     {},
                     {},
                     false};
    for (const HistoryEntry& entry : history_.entries) {
      if (entry.link.empty()) continue;
      table.rows.push_back({capture_cell(entry), Phrase{}.name(entry.link)});
    }
    if (!table.rows.empty()) section.tables.push_back(std::move(table));
    return section;
  }

  BriefSection questions_section() {
    BriefSection section{"questions", "Questions and answers", {}, {}};
    BriefTable table{"questions",
                     "Pairs with this line",
                     {{"reference", "Reference", false},
                      {"answer", "Answer", false},
                      {"then", "Line", false},
                      {"now", "And", false},
                      {"why", "Why", false}},
                     {},
                     {},
                     false};
    for (const auto* pairs : {&history_.waiting, &history_.decided}) {
      for (const LinkCase& pair : *pairs) {
        table.rows.push_back({Phrase{}.code(pair.reference),
                              Phrase{}.words(!pair.same   ? "waits"
                                             : *pair.same ? "yes"
                                                          : "no"),
                              Phrase{}.name(line_phrase(pair.then)),
                              Phrase{}.name(line_phrase(pair.now)), Phrase{}.name(pair.sentence)});
      }
    }
    if (!table.rows.empty()) section.tables.push_back(std::move(table));
    return section;
  }

  const LineHistory& history_;
  SourceList sources_;
};

}  // namespace

ReportPage history_page(const LineHistory& history) { return HistoryPage(history).make(); }

}  // namespace rangebook
