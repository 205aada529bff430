// Findings are worked out from the same figures as the tables.
#include "reports/brief_charts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

#include "reports/category_figures.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

// --- Size reach

Phrase labels_phrase(const std::vector<std::string>& labels) {
  constexpr std::size_t kNamed = 6;
  std::vector<Phrase> items;
  for (std::size_t i = 0; i < std::min(kNamed, labels.size()); ++i)
    items.push_back(Phrase{}.name(labels[i]));
  if (labels.size() > kNamed)
    items.push_back(Phrase{}.count(labels.size() - kNamed).words(" more"));
  return joined(items).words(labels.size() == 1 ? " is " : " are ");
}

std::int64_t move_of(const StepsChart::Step& step) {
  return std::abs(std::int64_t{step.now} - std::int64_t{step.then});
}

// --- Price ladder

std::vector<Phrase> ladder_row(const std::string& name, const PriceLadder& ladder,
                               std::string_view when, std::size_t note) {
  std::vector<Phrase> row;
  row.push_back(Phrase{}.name(name).words(fmt::format(", {}", when)));
  row.push_back(Phrase{}.count(ladder.lines).note(note));
  for (const MinorUnits amount :
       {ladder.entry, ladder.lower_quartile, ladder.median, ladder.upper_quartile, ladder.top}) {
    row.push_back(Phrase{}.money({amount, ladder.currency}));
  }
  row.push_back(Phrase{}.count(ladder.marked_down));
  if (ladder.median_depth) row.back().words(", by ").share(*ladder.median_depth);
  return row;
}

/// The picture of a currency: the one there is, or a new one.
LadderChart& chart_in(std::vector<std::pair<Currency, LadderChart>>& charts, Currency currency) {
  for (auto& [each, chart] : charts) {
    if (each == currency) return chart;
  }
  return charts.emplace_back(currency, LadderChart{}).second;
}

Phrase ladder_finding(const LadderChart& chart) {
  const LadderChart::Row* most = nullptr;
  const auto move = [](const LadderChart::Row& row) -> std::int64_t {
    if (!row.then || !row.now) return 0;
    return std::abs(per_mille_change(row.then->entry, row.now->entry).value_or(0));
  };
  for (const auto& row : chart.rows) {
    if (move(row) > (most == nullptr ? 0 : move(*most))) most = &row;
  }
  Phrase finding;
  if (most == nullptr) return finding.words("No entry price moved.");
  finding.words("The entry price moved most in ").name(most->label).words(": from ");
  finding.money({most->then->entry, most->then->currency}).words(" to ");
  return finding.money({most->now->entry, most->now->currency}).words(".");
}

// --- Coverage

CoverageChart::Seen seen_of(const CategorySide& side, std::uint32_t not_looked_for) {
  using enum CoverageChart::Seen;
  if (not_looked_for > 0) return side.lines == 0 ? unlooked : outside;
  return side.partial ? part : whole;
}

std::string_view seen_words(CoverageChart::Seen seen) {
  switch (seen) {
    case CoverageChart::Seen::whole:
      return "looked at";
    case CoverageChart::Seen::part:
      return "looked at; rows refused or sizes not stated";
    case CoverageChart::Seen::outside:
      return "not every line was looked for";
    case CoverageChart::Seen::unlooked:
      return "not looked at";
  }
  return {};
}

}  // namespace

Phrase reach_finding(const std::string& name, const StepsChart& chart) {
  std::vector<std::string> added;
  std::vector<std::string> lost;
  const StepsChart::Step* most = nullptr;
  for (const auto& step : chart.steps) {
    if (step.then == 0 && step.now > 0) added.push_back(step.label);
    if (step.then > 0 && step.now == 0) lost.push_back(step.label);
    if (most == nullptr || move_of(step) > move_of(*most)) most = &step;
  }
  Phrase finding = Phrase{}.words("In ").name(name).words(": ");
  if (added.size() == chart.steps.size()) return finding.words("seen in the later capture only.");
  if (lost.size() == chart.steps.size()) return finding.words("seen in the earlier capture only.");
  if (!added.empty()) finding.append(labels_phrase(added)).words("new");
  if (!added.empty() && !lost.empty()) finding.words("; ");
  if (!lost.empty()) finding.append(labels_phrase(lost)).words("gone");
  if (!added.empty() || !lost.empty()) return finding.words(".");
  if (most == nullptr || move_of(*most) == 0) return finding.words("as many lines in every size.");
  finding.words("no size is new or gone; ").name(most->label).words(" moved most, from ");
  return finding.share(most->then).words(" to ").share(most->now).words(" of lines.");
}

BriefTable price_ladder_table(const std::vector<const CategorySummary*>& summaries,
                              const Scope& common, SourceList& sources) {
  BriefTable table;
  table.key = "ladder";
  table.caption = "Prices by category, then and now";
  table.columns = {{"category", "Category", false},
                   {"lines", "Lines priced", true},
                   {"entry", "From", true},
                   {"lower_quartile", "Lower quartile", true},
                   {"median", "Median", true},
                   {"upper_quartile", "Upper quartile", true},
                   {"top", "Top", true},
                   {"marked_down", "Marked down", true}};
  std::vector<std::pair<Currency, LadderChart>> charts;
  for (const CategorySummary* summary : summaries) {
    const std::string name = category_words(summary->category, common);
    for (const LadderPair& pair : ladder_pairs(*summary)) {
      LadderChart::Row row{name, {}, {}};
      if (pair.then != nullptr) {
        table.rows.push_back(ladder_row(name, *pair.then, "then", sources.then()));
        row.then = *pair.then;
      }
      if (pair.now != nullptr) {
        table.rows.push_back(ladder_row(name, *pair.now, "now", sources.now()));
        row.now = *pair.now;
      }
      chart_in(charts, pair.currency()).rows.push_back(std::move(row));
    }
  }
  for (auto& [currency, chart] : charts) {
    Phrase finding = ladder_finding(chart);
    table.charts.push_back({std::move(finding), std::move(chart)});
  }
  return table;
}

std::vector<Chart> slope_charts(ChangeList moves) {
  sort_by_move(moves);
  std::vector<std::pair<Currency, SlopesChart>> charts;
  for (const Change* change : moves) {
    const auto* then = fact_of<PriceFact>(change->before);
    const auto* now = fact_of<PriceFact>(change->after);
    if (then == nullptr || now == nullptr || !change->line) continue;
    if (then->amount.currency != now->amount.currency) continue;
    auto found = std::find_if(charts.begin(), charts.end(), [now](const auto& each) {
      return each.first == now->amount.currency;
    });
    if (found == charts.end()) {
      charts.emplace_back(now->amount.currency, SlopesChart{});
      found = charts.end() - 1;
    }
    found->second.slopes.push_back(
        {std::string(line_words(*change->line)), then->amount, now->amount});
  }
  std::vector<Chart> result;
  for (auto& [currency, chart] : charts) {
    const auto up = std::count_if(chart.slopes.begin(), chart.slopes.end(), [](const auto& each) {
      return each.now.minor > each.then.minor;
    });
    Phrase finding;
    finding.words("Of ").count(chart.slopes.size());
    finding.words(chart.slopes.size() == 1 ? " full price that moved, "
                                           : " full prices that moved, ");
    finding.count(static_cast<std::size_t>(up)).words(" went up and ");
    finding.count(chart.slopes.size() - static_cast<std::size_t>(up)).words(" went down");
    if (charts.size() > 1) finding.words(" (").figure(currency.code()).words(")");
    result.push_back({finding.words("."), std::move(chart)});
  }
  return result;
}

BriefTable flow_table(const ChangeSet& set) {
  const Reconciliation& sums = set.reconciliation;
  BriefTable table;
  table.key = "flow";
  table.caption = "How the lines then became the lines now";
  table.columns = {{"what", "Lines", false}, {"then", "Then", true}, {"now", "Now", true}};
  table.folded = true;
  const auto add = [&table](std::string_view what, std::optional<std::uint32_t> then,
                            std::optional<std::uint32_t> now) {
    if (then.value_or(0) + now.value_or(0) == 0) return;
    const auto cell = [](const auto& count) { return count ? Phrase{}.count(*count) : Phrase{}; };
    table.rows.push_back({Phrase{}.words(what), cell(then), cell(now)});
  };
  add("carried", sums.carried, sums.carried);
  add("gone", sums.dropped, {});
  add("not looked at now", sums.not_covered, {});
  add("new", {}, sums.added);
  add("back", {}, sums.returned);
  add("not looked at then", {}, sums.unseen_then);
  table.rows.push_back({Phrase{}.words("all lines"), Phrase{}.count(sums.lines_then),
                        Phrase{}.count(sums.lines_now)});
  Phrase finding;
  finding.figure(lines_words(sums.carried)).words(" carried; ").count(sums.added).words(" new, ");
  finding.count(sums.dropped).words(" gone");
  if (sums.returned > 0) finding.words(", ").count(sums.returned).words(" back");
  const std::uint32_t unlooked = sums.not_covered + sums.unseen_then;
  if (unlooked > 0) finding.words(", ").count(unlooked).words(" that one capture did not look for");
  table.charts.push_back({finding.words("."), FlowChart{sums}});
  return table;
}

BriefTable coverage_table(const ChangeSet& set) {
  BriefTable table;
  table.key = "coverage";
  table.caption = "What each capture looked at";
  table.columns = {{"category", "Category", false},
                   {"then", "Then", false},
                   {"lines_then", "Lines then", true},
                   {"now", "Now", false},
                   {"lines_now", "Lines now", true}};
  table.folded = true;
  CoverageChart chart;
  std::size_t whole = 0;
  for (const CategorySummary& summary : set.categories) {
    if (summary.category == "all") continue;
    const std::string name = category_words(summary.category);
    const auto then = seen_of(summary.before, summary.unseen_then);
    const auto now = seen_of(summary.after, summary.not_covered);
    if (then == CoverageChart::Seen::whole && now == CoverageChart::Seen::whole) ++whole;
    chart.rows.push_back({name, then, now});
    table.rows.push_back({Phrase{}.name(name), Phrase{}.words(seen_words(then)),
                          Phrase{}.count(summary.lines_then), Phrase{}.words(seen_words(now)),
                          Phrase{}.count(summary.lines_now)});
  }
  Phrase finding;
  finding.words("Both captures looked at ").count(whole).words(" of ").count(chart.rows.size());
  finding.words(chart.rows.size() == 1 ? " category" : " categories").words(" without gaps.");
  if (!chart.rows.empty()) table.charts.push_back({std::move(finding), std::move(chart)});
  return table;
}

}  // namespace rangebook
