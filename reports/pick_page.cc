// Picks as a list, and what became of them.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "reports/pick_report.h"
#include "reports/pick_words.h"
#include "reports/seen_line.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

ReportPage base_page(const PickSheet& sheet, std::string kind, std::string_view what) {
  ReportPage page;
  page.kind = std::move(kind);
  page.skip = "Skip to the picks";
  const std::string shop(sheet.shop.empty()    ? "every shop"
                         : sheet.picks.empty() ? sheet.shop
                                               : shop_name(sheet.picks.front().shop));
  page.title = fmt::format("{}: {}", what, shop);
  page.heading.words(what);
  page.under.name(shop);
  if (!sheet.theme.empty()) {
    page.title += ", " + sheet.theme;
    page.under.words(", ").name(sheet.theme);
  }
  std::optional<Day> latest;
  for (const FollowedPick& each : sheet.picks) {
    if (each.latest) latest = std::max(latest.value_or(each.latest->on), each.latest->on);
  }
  if (latest) {
    page.dates.words("captures up to ").day(*latest);
    page.made = *latest;
  } else {
    page.dates.words("no captures");
  }
  page.captured = page.dates;
  page.cautions = report_cautions(false);
  return page;
}

/// `5 picks: 3 there, 1 gone, 1 not looked at since.`
Headline tally(const PickSheet& sheet) {
  if (sheet.picks.empty()) return {Theme::nothing, Phrase{}.words("No picks are kept here yet.")};
  Phrase phrase;
  phrase.figure(counted(sheet.picks.size(), "pick", "picks"));
  bool first = true;
  for (const PickState state : {PickState::there, PickState::gone, PickState::not_looked,
                                PickState::refused, PickState::not_kept}) {
    const auto count = std::count_if(sheet.picks.begin(), sheet.picks.end(),
                                     [&](const FollowedPick& each) { return each.state == state; });
    if (count == 0) continue;
    phrase.words(first ? ": " : ", ").count(static_cast<std::size_t>(count));
    phrase.words(" ").words(state_words(state));
    first = false;
  }
  return {Theme::stock, phrase.words(".")};
}

Phrase optional_day(const std::optional<Day>& day) {
  return day ? Phrase{}.day(*day) : Phrase{}.words("-");
}

Phrase price_cell(const FollowedPick& followed, const std::optional<SeenLine>& line,
                  SourceList& sources) {
  Phrase cell;
  if (!line) return cell.words("-");
  if (line->price) {
    cell.figure(span_words(*line->price));
  } else {
    cell.words("no price");
  }
  if (line->marked_down > 0 && line->full_price) {
    cell.words(" marked down from ").figure(span_words(*line->full_price));
  }
  return cell.note(pick_note(followed, line->seen, sources));
}

BriefSection outcome_section(const PickSheet& sheet, SourceList& sources) {
  BriefSection section{"outcome", "What became of them", {}, {}};
  BriefTable table{"picks",
                   "Pick by pick",
                   {{"number", "Pick", true},
                    {"line", "Line", false},
                    {"shop", "Shop", false},
                    {"then", "As picked", true},
                    {"now", "Last seen", true},
                    {"outcome", "What became of it", false}},
                   {},
                   {},
                   false};
  for (const FollowedPick& each : sheet.picks) {
    table.rows.push_back({Phrase{}.count(static_cast<std::size_t>(each.pick.number)),
                          pick_name(each), Phrase{}.name(shop_name(each.shop)),
                          price_cell(each, each.then, sources), price_cell(each, each.now, sources),
                          outcome_phrase(each, sources)});
  }
  if (!table.rows.empty()) section.tables.push_back(std::move(table));
  return section;
}

BriefSection changes_section(const PickSheet& sheet, SourceList& sources) {
  BriefSection section{"changes", "Every change since they were picked", {}, {}};
  BriefTable table{"changes",
                   "As the comparison of both captures lists them",
                   {{"line", "Line", false},
                    {"what", "What", false},
                    {"then", "Then", false},
                    {"now", "Now", false}},
                   {},
                   {},
                   false};
  for (const FollowedPick& each : sheet.picks) {
    for (const Change& change : each.changes) {
      Phrase then = side_phrase(change.kind, change.before);
      Phrase now = side_phrase(change.kind, change.after);
      if (change.evidence.before) then.note(pick_note(each, *change.evidence.before, sources));
      if (change.evidence.after) now.note(pick_note(each, *change.evidence.after, sources));
      table.rows.push_back({pick_name(each), Phrase{}.words(change_words(change.kind)),
                            std::move(then), std::move(now)});
    }
  }
  if (table.rows.empty()) {
    section.paragraphs.push_back(Phrase{}.words("No change was captured."));
  } else {
    section.tables.push_back(std::move(table));
  }
  return section;
}

/// What is said of a line: as last seen, else as it was picked.
const std::optional<SeenLine>& latest_sight(const FollowedPick& followed) {
  return followed.now ? followed.now : followed.then;
}

std::vector<Phrase> show_row(const FollowedPick& each, SourceList& sources) {
  const auto& line = latest_sight(each);
  Phrase price = price_cell(each, line, sources);
  if (line) price.words(", ").day(line->seen.on);
  return {pick_name(each),
          Phrase{}.name(shop_name(each.shop)),
          std::move(price),
          line ? Phrase{}.figure(sizes_words(*line)) : Phrase{}.words("-"),
          line ? Phrase{}.name(colours_words(*line)) : Phrase{}.words("-"),
          line ? Phrase{}.name(line->card.composition) : Phrase{}.words("-"),
          Phrase{}.name(praise_words(each.pick)),
          Phrase{}.name(chosen_words(each.pick, PickList::caution)),
          Phrase{}.name(each.pick.note),
          outcome_phrase(each, sources)};
}

BriefTable show_table(const FollowedPick& first, std::size_t number) {
  return {fmt::format("group-{}", number),
          first.pick.review ? "To look at again on " + day_words(*first.pick.review)
                            : "Without a review date",
          {{"line", "Line", false},
           {"shop", "Shop", false},
           {"price", "Price as captured", true},
           {"sizes", "Sizes", false},
           {"colours", "Colours", false},
           {"fabric", "Fabric", false},
           {"for", "For", false},
           {"caution", "Mind", false},
           {"note", "Note", false},
           {"outcome", "As it stands", false}},
          {},
          {},
          false};
}

bool is_empty(const Phrase& cell) {
  return std::all_of(cell.pieces.begin(), cell.pieces.end(),
                     [](const Piece& piece) { return piece.text.empty(); });
}

/// Her own words have columns only where she said any: the others need the room.
void drop_unsaid(BriefTable& table) {
  for (std::size_t i = table.columns.size(); i-- > 0;) {
    const std::string& key = table.columns[i].key;
    if (key != "for" && key != "caution" && key != "note") continue;
    if (!std::all_of(table.rows.begin(), table.rows.end(),
                     [i](const auto& row) { return is_empty(row[i]); })) {
      continue;
    }
    const auto place = static_cast<std::ptrdiff_t>(i);
    table.columns.erase(table.columns.begin() + place);
    for (auto& row : table.rows) row.erase(row.begin() + place);
  }
}

}  // namespace

PickSheet by_theme(PickSheet sheet) {
  std::stable_sort(sheet.picks.begin(), sheet.picks.end(),
                   [](const FollowedPick& a, const FollowedPick& b) {
                     const auto key = [](const Pick& pick) {
                       return std::tuple(pick.theme.empty(), std::string_view(pick.theme),
                                         !pick.review, pick.review.value_or(Day{}), pick.number);
                     };
                     return key(a.pick) < key(b.pick);
                   });
  return sheet;
}

ReportPage picks_page(const PickSheet& sheet) {
  SourceList sources({}, {});
  ReportPage page = base_page(sheet, "Picks", "Picks");
  page.headlines = {tally(sheet)};
  BriefTable table{"picks",
                   "By number",
                   {{"number", "Pick", true},
                    {"line", "Line", false},
                    {"shop", "Shop", false},
                    {"picked", "Picked", false},
                    {"theme", "Theme", false},
                    {"review", "Look again", false},
                    {"words", "Words", false},
                    {"caution", "Mind", false},
                    {"state", "State", false}},
                   {},
                   {},
                   false};
  for (const FollowedPick& each : sheet.picks) {
    Phrase picked = Phrase{}.day(each.pick.on);
    if (each.then) picked.note(pick_note(each, each.then->seen, sources));
    table.rows.push_back({Phrase{}.count(static_cast<std::size_t>(each.pick.number)),
                          pick_name(each), Phrase{}.name(shop_name(each.shop)), std::move(picked),
                          Phrase{}.name(each.pick.theme), optional_day(each.pick.review),
                          Phrase{}.name(praise_words(each.pick)),
                          Phrase{}.name(chosen_words(each.pick, PickList::caution)),
                          Phrase{}.words(state_words(each.state))});
  }
  BriefSection section{"picks", "All picks", {}, {}};
  if (!table.rows.empty()) section.tables.push_back(std::move(table));
  if (!sheet.picks.empty()) page.sections.push_back(std::move(section));
  page.sources = sources.take();
  return page;
}

ReportPage follow_up_page(const PickSheet& sheet) {
  SourceList sources({}, {});
  ReportPage page = base_page(sheet, "Follow-up", "Picks followed up");
  page.headlines = {tally(sheet)};
  if (!sheet.picks.empty()) {
    page.sections = {outcome_section(sheet, sources), changes_section(sheet, sources)};
  }
  page.sources = sources.take();
  return page;
}

ReportPage show_notes_page(const PickSheet& unordered) {
  const PickSheet sheet = by_theme(unordered);
  SourceList sources({}, {});
  ReportPage page = base_page(sheet, "Show notes", "Show notes");
  page.headlines = {tally(sheet)};
  const Pick* last = nullptr;
  std::size_t groups = 0;
  for (const FollowedPick& each : sheet.picks) {
    const Pick& pick = each.pick;
    const bool new_theme = !last || last->theme != pick.theme;
    if (new_theme) {
      page.sections.push_back({fmt::format("theme-{}", page.sections.size() + 1),
                               pick.theme.empty() ? "Without a theme" : clean_line(pick.theme),
                               {},
                               {}});
    }
    auto& tables = page.sections.back().tables;
    if (new_theme || last->review != pick.review) tables.push_back(show_table(each, ++groups));
    tables.back().rows.push_back(show_row(each, sources));
    last = &pick;
  }
  for (BriefSection& section : page.sections) {
    for (BriefTable& table : section.tables) drop_unsaid(table);
  }
  page.sources = sources.take();
  return page;
}

}  // namespace rangebook
