// The prices of a shop as a report for people.
#include "reports/price_report.h"

#include <fmt/format.h>

#include <utility>

#include "reports/brief_charts.h"
#include "reports/brief_formats.h"
#include "reports/brief_sources.h"
#include "reports/category_figures.h"
#include "reports/was_prices.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

/// The categories to be shown, and what both captures looked at.
struct Shown {
  std::vector<const CategorySummary*> summaries;
  Scope scope;

  std::string words(const CategorySummary& summary) const {
    return category_words(summary.category, scope);
  }
};

Phrase count_cell(std::uint32_t count) { return Phrase{}.count(count); }

/// `1.0312`.
std::string four_places(std::int64_t millionths) {
  const std::int64_t rounded = (millionths + 50) / 100;
  return fmt::format("{}.{:04}", rounded / 10'000, rounded % 10'000);
}

// --- Headlines

void add_index(std::vector<Headline>& out, const Shown& shown, SourceList& sources) {
  const CategorySummary& summary = *shown.summaries.front();
  Phrase sentence;
  if (!summary.index) {
    sentence.words("No price of ").name(shown.words(summary));
    sentence.words(" can be compared like for like.");
    out.push_back({Theme::prices, std::move(sentence)});
    return;
  }
  const IndexFact& index = *summary.index;
  sentence.words("Like for like, full prices of ").name(shown.words(summary));
  sentence.words(" are ");
  sentence.figure(index_words(index.jevons)).words(" on ").figure(lines_words(index.lines));
  sentence.words(" priced in both captures").note(sources.then()).note(sources.now());
  sentence.words(" (Jevons ").figure(four_places(index.jevons)).words(", Dutot ");
  sentence.figure(four_places(index.dutot)).words(", Carli ").figure(four_places(index.carli));
  out.push_back({Theme::prices, std::move(sentence.words(")."))});
}

void add_entry(std::vector<Headline>& out, const CategorySummary& summary, SourceList& sources) {
  for (const LadderPair& pair : ladder_pairs(summary)) {
    if (pair.then == nullptr || pair.now == nullptr) continue;
    const auto money = [](const PriceLadder& ladder, MinorUnits amount) {
      return money_words({amount, ladder.currency});
    };
    Phrase sentence;
    sentence.words("Prices begin at ").figure(money(*pair.now, pair.now->entry));
    sentence.note(sources.now()).words(", then ").figure(money(*pair.then, pair.then->entry));
    sentence.note(sources.then()).words("; the median line costs ");
    sentence.figure(money(*pair.now, pair.now->median)).words(", then ");
    sentence.figure(money(*pair.then, pair.then->median)).words(".");
    out.push_back({Theme::entry_prices, std::move(sentence)});
  }
}

void add_markdowns(std::vector<Headline>& out, const CategorySummary& summary,
                   SourceList& sources) {
  for (const LadderPair& pair : ladder_pairs(summary)) {
    if (pair.now == nullptr || pair.now->marked_down == 0) continue;
    Phrase sentence;
    sentence.figure(fmt::format("{} of {}", pair.now->marked_down, lines_words(pair.now->lines)));
    sentence.words(pair.now->marked_down == 1 ? " is marked down" : " are marked down");
    sentence.note(sources.now());
    if (pair.now->median_depth) {
      sentence.words(", by ").share(*pair.now->median_depth, false);
      sentence.words(" at the median");
    }
    if (pair.then != nullptr) {
      sentence.words("; then it was ");
      sentence.figure(fmt::format("{} of {}", pair.then->marked_down, pair.then->lines));
      sentence.note(sources.then());
    }
    out.push_back({Theme::markdowns, std::move(sentence.words("."))});
  }
}

std::vector<Headline> headlines(const ChangeSet& set, const Shown& shown, SourceList& sources) {
  std::vector<Headline> out;
  if (!shown.summaries.empty()) {
    add_index(out, shown, sources);
    add_entry(out, *shown.summaries.front(), sources);
    add_markdowns(out, *shown.summaries.front(), sources);
  }
  auto sentence = was_price_sentence(set, sources);
  if (sentence && (shown.summaries.empty() || shown.summaries.front()->category == "all")) {
    out.push_back({Theme::markdowns, *std::move(sentence)});
  }
  if (out.empty()) out.push_back({Theme::nothing, Phrase{}.words("No prices were captured.")});
  return out;
}

// --- Sections

BriefSection index_section(const Shown& shown) {
  BriefSection section{"like-for-like", "Like for like", {}, {}};
  section.paragraphs.push_back(Phrase{}.words(
      "Full prices, without markdowns, of lines that both captures hold and price: for each line "
      "its lowest over the variants both price. Jevons, the geometric mean of the price ratios, "
      "comes first, because it gives the same answer read backwards; Carli, their arithmetic mean, "
      "leans upwards; Dutot, the ratio of mean prices, follows the dearest lines. 1 is no "
      "change."));
  BriefTable table;
  table.key = "indices";
  table.caption = "Like-for-like index of full prices by category";
  table.columns = {{"category", "Category", false},
                   {"change", "Full prices", true},
                   {"jevons", "Jevons", true},
                   {"dutot", "Dutot", true},
                   {"carli", "Carli", true},
                   {"lines", "Lines compared", true},
                   {"other", "Carried, not comparable", true}};
  for (const CategorySummary* summary : shown.summaries) {
    const std::uint32_t compared = summary->index ? summary->index->lines : 0;
    std::vector<Phrase> row{Phrase{}.name(shown.words(*summary))};
    if (summary->index) {
      row.push_back(Phrase{}.figure(index_words(summary->index->jevons)));
      row.push_back(Phrase{}.figure(four_places(summary->index->jevons)));
      row.push_back(Phrase{}.figure(four_places(summary->index->dutot)));
      row.push_back(Phrase{}.figure(four_places(summary->index->carli)));
    } else {
      row.resize(5, Phrase{}.words("-"));
    }
    row.push_back(count_cell(compared));
    row.push_back(count_cell(summary->carried - compared));
    table.rows.push_back(std::move(row));
  }
  section.tables.push_back(std::move(table));
  return section;
}

BriefSection ladder_section(const Shown& shown, SourceList& sources) {
  BriefSection section{"ladder", "What lines cost", {}, {}};
  section.paragraphs.push_back(Phrase{}.words(
      "One price a line: the lowest anything of it sells for, in stock or not. Quartiles lie "
      "between neighbouring lines in proportion, as QUARTILE.INC of a spreadsheet has them "
      "(Hyndman and Fan, type 7), rounded to the smallest coin. The depth of a markdown is that of "
      "the line's deepest one, in parts of its full price; of a category it is the median."));
  BriefTable table = price_ladder_table(shown.summaries, shown.scope, sources);
  if (!table.rows.empty()) section.tables.push_back(std::move(table));
  return section;
}

Phrase priced_sum(const CategorySide& side) {
  Phrase cell;
  for (const PriceLadder& ladder : side.prices) {
    cell.count(ladder.lines).words(" in ").figure(ladder.currency.code());
    cell.words(" + ");
  }
  cell.count(side.unpriced).words(" without a price");
  if (side.outside > 0) {
    cell.words(" + ").count(side.outside).words(" outside what both looked at");
  }
  return cell;
}

Reconciliation sums_of(const CategorySummary& summary) {
  return {summary.lines_then, summary.lines_now,   summary.carried, summary.added,
          summary.returned,   summary.unseen_then, summary.dropped, summary.not_covered};
}

/// `41 carried + 2 gone = 43 lines then`; moves between categories are told apart.
Phrase then_sum(const CategorySummary& summary) {
  Reconciliation sums = sums_of(summary);
  if (summary.moved_in + summary.moved_out == 0) return lines_then_phrase(sums);
  sums.carried -= summary.moved_in;
  sums.carried += summary.moved_out;
  Phrase cell = lines_then_phrase(sums);
  if (summary.moved_out == 0) return cell;
  return cell.words(", of them ").count(summary.moved_out).words(" moved out");
}

Phrase now_sum(const CategorySummary& summary) {
  Phrase cell = lines_now_phrase(sums_of(summary));
  if (summary.moved_in == 0) return cell;
  return cell.words(", of them ").count(summary.moved_in).words(" moved in");
}

BriefSection sums_section(const Shown& shown) {
  BriefSection section{"sums", "How the lines add up", {}, {}};
  BriefTable table;
  table.key = "sums";
  table.caption = "Lines by category, and how many of them are priced";
  table.columns = {{"category", "Category", false},
                   {"then", "Then", false},
                   {"priced_then", "Priced then", false},
                   {"now", "Now", false},
                   {"priced_now", "Priced now", false}};
  for (const CategorySummary* summary : shown.summaries) {
    table.rows.push_back({Phrase{}.name(shown.words(*summary)), then_sum(*summary),
                          priced_sum(summary->before), now_sum(*summary),
                          priced_sum(summary->after)});
  }
  section.tables.push_back(std::move(table));
  return section;
}

BriefSection was_section(const ChangeSet& set, const PriceReportOptions& options,
                         SourceList& sources) {
  BriefSection section{"was-prices", "\"Was\" prices", {}, {}};
  if (set.was_prices && set.was_prices->marked_down > 0) {
    section.paragraphs.push_back(Phrase{}.words(
        "In the European Union the price a reduction is announced against is to be the lowest of "
        "at least the 30 days before it (Directive 98/6/EC, article 6a, since Directive (EU) "
        "2019/2161); countries may make exceptions, for goods sold down step by step among others, "
        "and other countries have other rules. Our captures show single days only: what they do "
        "not show, they do not prove."));
  }
  const auto findings = findings_of(set, options.category);
  if (!findings.empty()) section.tables.push_back(was_price_table(findings, sources));
  return section;
}

BriefSection notes_section(const ChangeSet& set) {
  BriefSection section{"looked-at", "What was not looked at or not stated", {}, {}};
  for (const auto& note : set.coverage.notes) section.paragraphs.push_back(Phrase{}.name(note));
  return section;
}

}  // namespace

ReportPage price_page(const ChangeSet& set, const PriceReportOptions& options) {
  SourceList sources(set.from, set.to);
  const Shown shown{summaries_of(set, options.category), set.coverage.common};
  ReportPage page = page_of({set.shop, set.from, set.to, options.invented, {}, {}, {}, {}});
  page.kind = "Prices";
  page.skip = "Skip to the prices";
  page.title += options.category.empty()
                    ? ", prices"
                    : fmt::format(", prices of {}", category_words(options.category));
  if (!options.category.empty()) page.under.words(", ").name(category_words(options.category));
  page.headline_dates = {};
  page.headlines = headlines(set, shown, sources);
  page.sections = {index_section(shown), ladder_section(shown, sources),
                   was_section(set, options, sources), sums_section(shown), notes_section(set)};
  std::erase_if(page.sections, [](const BriefSection& section) {
    return section.paragraphs.empty() && section.tables.empty();
  });
  page.sources = sources.take();
  page.cautions = report_cautions(options.invented);
  return page;
}

}  // namespace rangebook
