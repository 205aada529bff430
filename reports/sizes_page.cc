// One shop's sizes as a report for people: what it states against what was found.
#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "reports/brief_sources.h"
#include "reports/share_words.h"
#include "reports/size_report_forms.h"
#include "reports/wording.h"
#include "schema/shop_name.h"

namespace rangebook {
namespace {

bool offered(const SizeLine& line) { return line.step.offering > 0; }

/// The largest size any line offers; null if none does.
const SizeLine* largest_offered(const SizeTable& table) {
  const auto found = std::find_if(table.sizes.rbegin(), table.sizes.rend(), offered);
  return found == table.sizes.rend() ? nullptr : &*found;
}

/// `dresses, petite`: what a table is about besides the system, which stands before its sizes.
std::string table_name(const SizeReport& report, const CategorySizes& category,
                       const SizeTable& table) {
  std::string name = category_words(category.category, report.capture.scope);
  if (table.fit != FitRange::regular) name += fmt::format(", {}", to_string(table.fit));
  const auto system = table.system == SizeSystem::alpha      ? std::string_view("letters")
                      : table.system == SizeSystem::one_size ? std::string_view("one size")
                                                             : system_words(table.system);
  return system.empty() ? name : fmt::format("{}, {}", name, system);
}

Phrase share_cell(std::uint32_t part, std::uint32_t whole,
                  const std::optional<ShareInterval>& interval) {
  return Phrase{}.figure(share_words(part, whole) + interval_note(interval));
}

Phrase since_cell(const std::optional<OfferedSince>& since, SourceList& sources) {
  if (!since) return Phrase{}.words("-");
  Phrase cell;
  cell.name(since->first.season.empty() ? day_words(since->first.on) : since->first.season);
  cell.note(sources.number(since->first)).words(", ");
  cell.figure(counted(since->captures, "capture", "captures"));
  if (since->cannot_tell > 0) {
    cell.words(" (").count(since->cannot_tell).words(" in between cannot tell)");
  }
  return cell;
}

// --- Stated against found

/// Stated sizes of a table that no line offers.
std::vector<std::string> not_found(const SizeTable& table) {
  std::vector<std::string> labels;
  for (const SizeLine& line : table.sizes) {
    if (line.stated && !offered(line)) labels.push_back(line.step.size.label);
  }
  return labels;
}

const SizeLine* largest_stated(const SizeTable& table) {
  const auto found = std::find_if(table.sizes.rbegin(), table.sizes.rend(),
                                  [](const SizeLine& line) { return line.stated; });
  return found == table.sizes.rend() ? nullptr : &*found;
}

Headline stated_headline(const SizeReport& report, const SizeTable& table, std::string_view where,
                         SourceList& sources) {
  const SizeLine& last = *largest_stated(table);
  Phrase sentence;
  sentence.name(shop_name(report.shop)).words(" states ");
  const auto system = system_words(table.system);
  if (!system.empty()) sentence.words(fmt::format("{} ", system));
  sentence.figure(report.stated->words).words(" (read ");
  sentence.day(report.stated->on).words("). Its largest, ");
  sentence.figure(last.step.size.label).words(", was found in ");
  sentence.figure(fmt::format("{} of {}", last.step.offering, lines_words(table.lines)));
  sentence.words(" of ").name(where).note(sources.now());
  const SizeLine* largest = largest_offered(table);
  if (!offered(last) && largest != nullptr) {
    sentence.words("; the largest found is ").figure(largest->step.size.label).words(", in ");
    sentence.figure(fmt::format("{} of {}", largest->step.offering, table.lines));
  }
  return {Theme::sizes, std::move(sentence.words("."))};
}

Headline reach_headline(const SizeTable& table, std::string_view where, SourceList& sources) {
  Phrase sentence;
  const SizeLine& largest = *largest_offered(table);
  sentence.words("Sizes found in ").name(where).words(": ");
  sentence.figure(size_range_words(found_sizes(table))).note(sources.now()).words("; ");
  sentence.figure(largest.step.size.label).words(" in ");
  sentence.figure(fmt::format("{} of {}", largest.step.offering, lines_words(table.lines)));
  sentence.words(", in stock in ").figure(stock_words(largest.step));
  return {Theme::sizes, std::move(sentence.words("."))};
}

/// What the shop states comes first.
std::vector<Headline> headlines(const SizeReport& report, SourceList& sources) {
  std::vector<Headline> out;
  std::vector<Headline> others;
  if (!report.categories.empty()) {
    const CategorySizes& first = report.categories.front();
    const std::string where = category_words(first.category, report.capture.scope);
    for (const SizeTable& table : first.tables) {
      if (largest_stated(table) != nullptr) {
        out.push_back(stated_headline(report, table, where, sources));
      } else if (table.system != SizeSystem::one_size && largest_offered(table) != nullptr) {
        others.push_back(reach_headline(table, where, sources));
      }
    }
  }
  std::move(others.begin(), others.end(), std::back_inserter(out));
  if (out.empty()) {
    Phrase sentence;
    sentence.words("No line that states its sizes was captured").note(sources.now());
    out.push_back({Theme::nothing, std::move(sentence.words("."))});
  }
  return out;
}

// --- Sections

BriefSection summary_section(const SizeReport& report, SourceList& sources) {
  BriefSection section{"by-category", "By category", {}, {}};
  BriefTable table;
  table.key = "by_category";
  table.caption = "Sizes found, and how many lines offer the largest";
  table.columns = {{"category", "Category", false}, {"found", "Found", false},
                   {"largest", "Largest", false},   {"share", "Share of lines", true},
                   {"in_stock", "In stock", true},  {"since", "Since", false}};
  if (report.stated) table.columns.push_back({"not_found", "Stated, not found", false});
  for (const CategorySizes& category : report.categories) {
    for (const SizeTable& each : category.tables) {
      const SizeLine* largest = largest_offered(each);
      if (largest == nullptr) continue;
      const ReachStep& step = largest->step;
      std::vector<Phrase> row{
          Phrase{}.name(table_name(report, category, each)),
          Phrase{}.figure(size_range_words(found_sizes(each))).note(sources.now()),
          Phrase{}
              .figure(step.size.label)
              .words(": ")
              .figure(fmt::format("{} of {}", step.offering, each.lines)),
          share_cell(step.offering, each.lines, step.offering_interval),
          Phrase{}.figure(stock_words(step)),
          since_cell(largest->since, sources)};
      if (report.stated) {
        Phrase missing;
        for (const std::string& label : not_found(each)) {
          if (!missing.empty()) missing.words(", ");
          missing.figure(label);
        }
        row.push_back(missing.empty() ? Phrase{}.words("-") : std::move(missing));
      }
      table.rows.push_back(std::move(row));
    }
  }
  if (!table.rows.empty()) section.tables.push_back(std::move(table));
  return section;
}

/// Offered and in stock, size by size; nothing where a line does not say what it has in stock.
std::optional<Chart> sizes_chart(const SizeTable& sizes, const std::string& name) {
  const SizeLine* largest = largest_offered(sizes);
  const auto unknown = [](const SizeLine& line) { return line.step.stock_unknown > 0; };
  if (largest == nullptr || std::any_of(sizes.sizes.begin(), sizes.sizes.end(), unknown)) return {};
  StepsChart chart;
  chart.sides = ChartSides::offered_in_stock;
  for (const SizeLine& line : sizes.sizes) {
    chart.steps.push_back({line.step.size.label, per_mille(line.step.offering, sizes.lines),
                           per_mille(line.step.in_stock, sizes.lines)});
  }
  Phrase finding = Phrase{}.words("In ").name(name).words(": ");
  finding.figure(largest->step.size.label).words(", the largest, is offered by ");
  finding.figure(share_words(largest->step.offering, sizes.lines)).words(" of ");
  finding.figure(lines_words(sizes.lines)).words(", in stock in ");
  finding.figure(share_words(largest->step.in_stock, sizes.lines)).words(".");
  return Chart{std::move(finding), std::move(chart)};
}

BriefTable sizes_table(const SizeReport& report, const CategorySizes& category,
                       const SizeTable& sizes, SourceList& sources) {
  BriefTable table;
  table.key = "sizes";
  table.caption = fmt::format("Size by size: {} ({})", table_name(report, category, sizes),
                              lines_words(sizes.lines));
  table.columns = {{"size", "Size", false},
                   {"offering", "Lines that offer it", true},
                   {"share", "Share", true},
                   {"in_stock", "In stock", true},
                   {"in_stock_share", "Share in stock", true},
                   {"stock_unknown", "Stock not stated", true},
                   {"since", "Since", false}};
  for (const SizeLine& line : sizes.sizes) {
    const ReachStep& step = line.step;
    Phrase label;
    label.name(step.size.label);
    if (line.stated && !offered(line)) label.words(" (stated)");
    table.rows.push_back({std::move(label), Phrase{}.count(step.offering),
                          share_cell(step.offering, sizes.lines, step.offering_interval),
                          Phrase{}.count(step.in_stock),
                          step.stock_unknown > 0
                              ? Phrase{}.words("-")
                              : share_cell(step.in_stock, sizes.lines, step.in_stock_interval),
                          Phrase{}.count(step.stock_unknown), since_cell(line.since, sources)});
  }
  auto chart = sizes_chart(sizes, table_name(report, category, sizes));
  if (chart) table.charts.push_back(std::move(*chart));
  return table;
}

BriefSection sizes_section(const SizeReport& report, SourceList& sources) {
  BriefSection section{"size-by-size", "Size by size", {}, {}};
  section.paragraphs.push_back(Phrase{}.words(
      "Shares are of the lines with sizes of the system and fit named; sold-out sizes count as "
      "offered. Since: the earliest capture from which every capture that could tell shows the "
      "size."));
  for (const CategorySizes& category : report.categories) {
    for (const SizeTable& each : category.tables) {
      if (each.system == SizeSystem::one_size) continue;
      section.tables.push_back(sizes_table(report, category, each, sources));
      section.tables.back().folded = category.category != "all" && report.categories.size() > 1;
    }
  }
  return section;
}

BriefSection sums_section(const SizeReport& report) {
  BriefSection section{"looked-at", "What was looked at, and how it adds up", {}, {}};
  Phrase looked;
  const Scope& scope = report.capture.scope;
  looked.words("The capture looked at ");
  looked.name(scope.kind == Scope::Kind::all ? "the whole range" : to_string(scope));
  looked.words("; ").figure(report.rows_refused == 0
                                ? "no row was"
                                : counted(report.rows_refused, "row was", "rows were"));
  looked.words(" refused.");
  section.paragraphs.push_back(std::move(looked));
  if (std::any_of(report.categories.begin(), report.categories.end(),
                  [](const CategorySizes& each) { return each.partial; })) {
    section.paragraphs.push_back(Phrase{}.words(
        "Where a capture may lack lines, because it looked at a part, rows were refused, or pages "
        "show no sizes, shares have their 95% interval (Wilson): the share of all lines lies in it "
        "if those seen are a fair sample."));
  }
  BriefTable table;
  table.key = "sums";
  table.caption = "Lines by category: lines that do not state their sizes are in no share";
  table.columns = {{"category", "Category", false},
                   {"lines", "Lines", true},
                   {"ranked", "With sizes of a known system", true},
                   {"unranked", "With other sizes", true},
                   {"unsized", "Sizes not stated", true}};
  for (const CategorySizes& each : report.categories) {
    table.rows.push_back({Phrase{}.name(category_words(each.category, report.capture.scope)),
                          Phrase{}.count(each.lines), Phrase{}.count(each.ranked),
                          Phrase{}.count(each.unranked), Phrase{}.count(each.unsized)});
  }
  section.tables.push_back(std::move(table));
  return section;
}

}  // namespace

SizeFact found_sizes(const SizeTable& table) {
  SizeFact fact{table.system, table.fit, {}, {}, {}};
  for (const SizeLine& line : table.sizes) {
    if (offered(line)) fact.labels.push_back(line.step.size.label);
  }
  if (fact.labels.empty()) return fact;
  fact.min = fact.labels.front();
  fact.max = fact.labels.back();
  return fact;
}

Phrase sizes_phrase(const CategorySizes& category) {
  Phrase phrase;
  for (const SizeTable& table : category.tables) {
    const SizeFact found = found_sizes(table);
    if (found.labels.empty()) continue;
    if (!phrase.empty()) phrase.words("; ");
    phrase.figure(size_range_words(found));
  }
  return phrase;
}

ReportPage sizes_page(const SizeReport& report) {
  SourceList sources(report.capture, report.capture);
  ReportPage page;
  page.kind = "Sizes";
  page.skip = "Skip to the sizes";
  page.title = fmt::format(
      "{}: sizes, {}", shop_name(report.shop),
      report.capture.season.empty() ? day_words(report.capture.on) : report.capture.season);
  page.heading.name(shop_name(report.shop));
  page.under.words("Sizes, ").name(report.capture.season);
  page.dates.name(report.capture.season).words(" captured ").day(report.capture.on);
  page.captured = page.dates;
  page.made = report.capture.on;
  page.headlines = headlines(report, sources);
  page.sections = {summary_section(report, sources), sizes_section(report, sources),
                   sums_section(report)};
  std::erase_if(page.sections, [](const BriefSection& section) {
    return section.paragraphs.empty() && section.tables.empty();
  });
  page.sources = sources.take();
  page.cautions = report_cautions(false);
  return page;
}

}  // namespace rangebook
