// One size across shops as a report for people.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "reports/brief_sources.h"
#include "reports/share_words.h"
#include "reports/size_report_forms.h"
#include "reports/wording.h"
#include "schema/shop_name.h"

namespace rangebook {
namespace {

using Rows = std::vector<const ReachingShop*>;

Rows rows_of(const ReachingReport& report, Reaching reaching) {
  Rows rows;
  for (const ReachingShop& shop : report.shops) {
    if (shop.reaching == reaching) rows.push_back(&shop);
  }
  return rows;
}

std::string shop_words(const ReachingShop& row) {
  const std::string_view name = shop_name(row.shop);
  return row.fit == FitRange::regular ? std::string(name)
                                      : fmt::format("{}, {}", name, to_string(row.fit));
}

std::string size_words(const Size& size) {
  const auto system = system_words(size.system);
  return system.empty() ? size.label : fmt::format("{} {}", system, size.label);
}

Phrase shop_cell(const ReachingShop& row) { return Phrase{}.name(shop_words(row)); }

/// The note of a capture of this shop; among sources of several shops its name has to be there.
std::size_t note_of(const ReachingShop& row, Sighting seen, SourceList& sources) {
  const std::string_view name = shop_name(row.shop);
  seen.season = seen.season.empty() ? std::string(name) : fmt::format("{}, {}", name, seen.season);
  return sources.number(seen);
}

/// `7 September 2026`, with the note of the capture.
Phrase capture_cell(const ReachingShop& row, SourceList& sources) {
  if (!row.capture) return Phrase{}.words("no capture");
  const CaptureInfo& capture = *row.capture;
  const Sighting seen{capture.id, capture.on, capture.season, {}, {}};
  return Phrase{}.day(capture.on).note(note_of(row, seen, sources));
}

Phrase since_cell(const ReachingShop& row, SourceList& sources) {
  if (!row.since) return Phrase{}.words("-");
  Phrase cell;
  cell.name(row.since->first.season.empty() ? day_words(row.since->first.on)
                                            : row.since->first.season);
  cell.note(note_of(row, row.since->first, sources)).words(", ");
  return cell.figure(counted(row.since->captures, "capture", "captures"));
}

std::vector<Phrase> found_cells(const ReachingShop& row, SourceList& sources) {
  const std::string share =
      share_words(row.step.offering, row.lines) + interval_note(row.step.offering_interval);
  return {shop_cell(row),
          Phrase{}.figure(fmt::format("{} of {}", row.step.offering, row.lines)),
          Phrase{}.figure(share),
          Phrase{}.figure(stock_words(row.step)),
          Phrase{}.count(row.unsized),
          since_cell(row, sources),
          capture_cell(row, sources)};
}

BriefTable found_table(const Rows& rows, std::string key, std::string caption,
                       SourceList& sources) {
  BriefTable table;
  table.key = std::move(key);
  table.caption = std::move(caption);
  table.columns = {{"shop", "Shop", false},          {"lines", "Lines", true},
                   {"share", "Share", true},         {"in_stock", "In stock", true},
                   {"unsized", "No sizes", true},    {"since", "Since", false},
                   {"capture", "As captured", false}};
  for (const ReachingShop* row : rows) table.rows.push_back(found_cells(*row, sources));
  return table;
}

/// Shops by how much of their range reaches the size; none where stock is not stated.
std::optional<Chart> reaching_chart(const ReachingReport& report, const Rows& rows) {
  const auto unknown = [](const ReachingShop* row) { return row->step.stock_unknown > 0; };
  if (rows.size() < 2 || std::any_of(rows.begin(), rows.end(), unknown)) return {};
  BarsChart chart;
  chart.sides = ChartSides::offered_in_stock;
  const ReachingShop* most = rows.front();
  const auto share = [](const ReachingShop& row) {
    return per_mille(row.step.offering, row.lines);
  };
  for (const ReachingShop* row : rows) {
    chart.rows.push_back(
        {shop_words(*row), share(*row), per_mille(row->step.in_stock, row->lines)});
    if (share(*row) > share(*most)) most = row;
  }
  Phrase finding;
  finding.figure(size_words(report.size)).words(" is offered most at ").name(shop_words(*most));
  finding.words(": by ").figure(share_words(most->step.offering, most->lines));
  finding.words(" of the lines with such sizes.");
  return Chart{std::move(finding), std::move(chart)};
}

BriefTable other_table(const Rows& rows, SourceList& sources) {
  BriefTable table;
  table.key = "other_systems";
  table.caption = "Other size system, not compared";
  table.columns = {{"shop", "Shop", false},
                   {"systems", "Size systems", false},
                   {"capture", "As captured", false}};
  for (const ReachingShop* row : rows) {
    Phrase systems;
    for (const SizeSystem system : row->systems) {
      if (!systems.empty()) systems.words(", ");
      systems.words(to_string(system));
    }
    table.rows.push_back({shop_cell(*row), std::move(systems), capture_cell(*row, sources)});
  }
  return table;
}

BriefTable unseen_table(const Rows& rows, SourceList& sources) {
  BriefTable table;
  table.key = "not_seen";
  table.caption = "Nothing can be said: no line that states its sizes was captured";
  table.columns = {
      {"shop", "Shop", false}, {"unsized", "No sizes", true}, {"capture", "As captured", false}};
  for (const ReachingShop* row : rows) {
    table.rows.push_back(
        {shop_cell(*row), Phrase{}.count(row->unsized), capture_cell(*row, sources)});
  }
  return table;
}

/// Shops, each once however many fit ranges it has.
std::size_t shops_in(const Rows& rows) {
  std::vector<std::string> slugs;
  for (const ReachingShop* row : rows) slugs.push_back(row->shop.slug);
  std::sort(slugs.begin(), slugs.end());
  return static_cast<std::size_t>(std::unique(slugs.begin(), slugs.end()) - slugs.begin());
}

Headline headline(const ReachingReport& report) {
  Rows all;
  for (const ReachingShop& shop : report.shops) all.push_back(&shop);
  const std::size_t reaching = shops_in(rows_of(report, Reaching::reaches));
  Phrase sentence;
  sentence.figure(size_words(report.size)).words(" in ").name(category_words(report.category));
  sentence.words(": found at ");
  sentence.figure(fmt::format("{} of {}", reaching, counted(shops_in(all), "shop", "shops")));
  return {Theme::sizes, std::move(sentence.words(", each as last captured."))};
}

}  // namespace

ReportPage reaching_page(const ReachingReport& report) {
  SourceList sources({}, {});
  ReportPage page;
  page.kind = "Who reaches a size";
  page.skip = "Skip to the shops";
  page.title =
      fmt::format("Size {} in {}", size_words(report.size), category_words(report.category));
  page.heading.words("Size ").figure(size_words(report.size));
  page.under.name(category_words(report.category));
  page.dates.words("Each shop by its latest capture");
  page.captured = page.dates;
  for (const ReachingShop& shop : report.shops) {
    if (shop.capture) page.made = std::max(page.made, shop.capture->on);
  }
  page.headlines = {headline(report)};
  BriefSection section{"shops", "Shop by shop", {}, {}};
  section.paragraphs.push_back(Phrase{}.words(
      "Lines: those that offer the size, of all lines captured with sizes of its system and fit. "
      "Where the capture is partial, the share has its 95% interval (Wilson). Size systems are "
      "never converted into each other."));
  const auto add = [&section](BriefTable table) {
    if (!table.rows.empty()) section.tables.push_back(std::move(table));
  };
  const Rows reached = rows_of(report, Reaching::reaches);
  BriefTable found = found_table(reached, "reaches", "Shops that offer it", sources);
  if (auto chart = reaching_chart(report, reached)) found.charts.push_back(std::move(*chart));
  add(std::move(found));
  add(found_table(rows_of(report, Reaching::not_found), "not_found", "Looked for, not found",
                  sources));
  add(other_table(rows_of(report, Reaching::other_system), sources));
  add(unseen_table(rows_of(report, Reaching::not_seen), sources));
  page.sections.push_back(std::move(section));
  page.sources = sources.take();
  page.cautions = report_cautions(false);
  return page;
}

}  // namespace rangebook
