// The sections of a brief that are about figures: sizes and prices.
#include <fmt/format.h>

#include <algorithm>

#include "reports/brief_charts.h"
#include "reports/brief_sections.h"
#include "reports/category_figures.h"
#include "reports/change_groups.h"
#include "reports/share_words.h"
#include "reports/was_prices.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

/// Both sides of one system and fit of a category; either may be missing.
struct ReachPair {
  const CategorySummary* summary = nullptr;
  const SizeReach* then = nullptr;
  const SizeReach* now = nullptr;
  SizeSystem system = SizeSystem::unknown;
  FitRange fit = FitRange::regular;
};

const SizeReach* same_reach(const CategorySide& side, const SizeReach& wanted) {
  for (const SizeReach& each : side.reach) {
    if (each.system == wanted.system && each.fit == wanted.fit) return &each;
  }
  return nullptr;
}

std::vector<ReachPair> reach_pairs(const ChangeSet& set) {
  std::vector<ReachPair> pairs;
  for (const CategorySummary& summary : set.categories) {
    for (const SizeReach& now : summary.after.reach) {
      pairs.push_back({&summary, same_reach(summary.before, now), &now, now.system, now.fit});
    }
    for (const SizeReach& then : summary.before.reach) {
      if (same_reach(summary.after, then) != nullptr) continue;
      pairs.push_back({&summary, &then, nullptr, then.system, then.fit});
    }
  }
  return pairs;
}

SizeFact offered_sizes(const SizeReach& reach) {
  SizeFact fact{reach.system, reach.fit, {}, {}, {}};
  for (const ReachStep& step : reach.steps) {
    if (step.offering > 0) fact.labels.push_back(step.size.label);
  }
  if (fact.labels.empty()) return fact;
  fact.min = fact.labels.front();
  fact.max = fact.labels.back();
  return fact;
}

Phrase range_cell(const SizeReach* reach, std::size_t note) {
  if (reach == nullptr) return Phrase{}.figure("none");
  return Phrase{}.figure(size_range_words(offered_sizes(*reach))).note(note);
}

/// `24: 4 of 24`, the lines that offer the largest size.
Phrase largest_cell(const SizeReach* reach) {
  if (reach == nullptr || reach->steps.empty() || reach->system == SizeSystem::unknown) return {};
  const ReachStep& last = reach->steps.back();
  return Phrase{}
      .figure(last.size.label)
      .words(": ")
      .figure(fmt::format("{} of {}", last.offering, reach->lines) +
              interval_note(last.offering_interval));
}

std::string reach_name(const ReachPair& pair) {
  std::string name = category_words(pair.summary->category);
  if (pair.fit != FitRange::regular) name += fmt::format(", {}", to_string(pair.fit));
  return name;
}

BriefTable range_table(const std::vector<ReachPair>& pairs, SourceList& sources) {
  BriefTable table;
  table.key = "ranges";
  table.caption = "Size range by category, and how many lines offer the largest size";
  table.columns = {{"category", "Category", false},
                   {"then", "Then", false},
                   {"now", "Now", false},
                   {"largest_then", "Largest, then", false},
                   {"largest_now", "Largest, now", false}};
  for (const ReachPair& pair : pairs) {
    table.rows.push_back({Phrase{}.name(reach_name(pair)), range_cell(pair.then, sources.then()),
                          range_cell(pair.now, sources.now()), largest_cell(pair.then),
                          largest_cell(pair.now)});
  }
  return table;
}

/// The step of a size; one that no line offers where the side has none of it.
ReachStep step_of(const SizeReach* reach, const Size& size) {
  if (reach != nullptr) {
    for (const ReachStep& step : reach->steps) {
      if (step.size.label == size.label) return step;
    }
  }
  return ReachStep{size};
}

/// Sizes of both sides in order; by their key where they rank, else the later side's order first.
std::vector<Size> all_steps(const ReachPair& pair) {
  std::vector<Size> sizes;
  const auto add = [&sizes](const SizeReach* reach) {
    if (reach == nullptr) return;
    for (const ReachStep& step : reach->steps) {
      const auto same = [&step](const Size& size) { return size.label == step.size.label; };
      if (std::none_of(sizes.begin(), sizes.end(), same)) sizes.push_back(step.size);
    }
  };
  add(pair.now);
  add(pair.then);
  if (pair.system == SizeSystem::unknown) return sizes;
  std::stable_sort(sizes.begin(), sizes.end(), [](const Size& a, const Size& b) {
    return std::pair(a.low, a.high) < std::pair(b.low, b.high);
  });
  return sizes;
}

std::uint32_t share(std::uint32_t part, const SizeReach* of) {
  constexpr std::uint64_t kWhole = 1000;
  if (of == nullptr || of->lines == 0) return 0;
  return static_cast<std::uint32_t>((part * kWhole + of->lines / 2) / of->lines);
}

Phrase share_cell(const ReachStep& step, const SizeReach* of) {
  if (of == nullptr) return Phrase{}.figure("none");
  return Phrase{}.figure(fmt::format("{} of {}", step.offering, of->lines) +
                         interval_note(step.offering_interval));
}

/// `dresses, UK`: one category may have sizes of several systems.
std::string picture_name(const ReachPair& pair) {
  const SizeSystem system = pair.system;
  const auto words = system == SizeSystem::alpha ? "letter sizes" : system_words(system);
  return words.empty() ? reach_name(pair) : fmt::format("{}, {}", reach_name(pair), words);
}

BriefTable size_by_size_table(const ReachPair& pair) {
  BriefTable table;
  table.key = "size_by_size";
  table.caption = fmt::format("Lines that offer each size: {}", picture_name(pair));
  table.columns = {{"size", "Size", false}, {"then", "Then", true}, {"now", "Now", true}};
  table.folded = true;
  StepsChart chart;
  for (const Size& size : all_steps(pair)) {
    const ReachStep then = step_of(pair.then, size);
    const ReachStep now = step_of(pair.now, size);
    table.rows.push_back(
        {Phrase{}.name(size.label), share_cell(then, pair.then), share_cell(now, pair.now)});
    chart.steps.push_back(
        {size.label, share(then.offering, pair.then), share(now.offering, pair.now)});
  }
  Phrase finding = reach_finding(picture_name(pair), chart);
  table.charts.push_back({std::move(finding), std::move(chart)});
  return table;
}

Phrase price_cell(const PriceLadder* prices, MinorUnits PriceLadder::*step, std::size_t note) {
  if (prices == nullptr) return Phrase{}.figure("none");
  return Phrase{}.money({prices->*step, prices->currency}).note(note);
}

Phrase index_cell(const CategorySummary& summary) {
  if (!summary.index) return {};
  return Phrase{}
      .figure(index_words(summary.index->jevons))
      .words(" on ")
      .count(summary.index->lines);
}

Phrase marked_cell(const LadderPair& pair) {
  const auto text = [](const PriceLadder* side) {
    return side == nullptr ? std::string("none")
                           : fmt::format("{} of {}", side->marked_down, side->lines);
  };
  return Phrase{}.figure(text(pair.then)).words(", now ").figure(text(pair.now));
}

BriefTable ladder_table(const std::vector<LadderPair>& pairs, SourceList& sources) {
  BriefTable table;
  table.key = "by_category";
  table.caption = "Prices by category, one price a line (its lowest)";
  table.columns = {{"category", "Category", false},     {"entry_then", "From, then", true},
                   {"entry_now", "From, now", true},    {"median_then", "Median, then", true},
                   {"median_now", "Median, now", true}, {"like_for_like", "Like for like", true},
                   {"marked_down", "Marked down", true}};
  for (const LadderPair& pair : pairs) {
    table.rows.push_back({Phrase{}.name(category_words(pair.summary->category)),
                          price_cell(pair.then, &PriceLadder::entry, sources.then()),
                          price_cell(pair.now, &PriceLadder::entry, sources.now()),
                          price_cell(pair.then, &PriceLadder::median, sources.then()),
                          price_cell(pair.now, &PriceLadder::median, sources.now()),
                          index_cell(*pair.summary), marked_cell(pair)});
  }
  return table;
}

Phrase step_cell(const Change& change) {
  const auto* before = fact_of<PriceFact>(change.before);
  const auto* after = fact_of<PriceFact>(change.after);
  if (before == nullptr || after == nullptr) return {};
  if (before->amount.currency != after->amount.currency) return {};
  Phrase cell;
  cell.value(MoneyStep{{after->amount.minor - before->amount.minor, after->amount.currency}});
  if (const auto move = price_move(change)) {
    cell.words(" (").share(*move, true).words(")");
  }
  return cell;
}

BriefTable moves_table(ChangeList changes, std::string key, std::string caption,
                       SourceList& sources) {
  sort_by_move(changes);
  BriefTable table;
  table.key = std::move(key);
  table.caption = std::move(caption);
  table.columns = {{"line", "Line", false},
                   {"then", "Then", true},
                   {"now", "Now", true},
                   {"step", "Change", true}};
  for (const Change* change : changes) {
    Phrase before = side_cell(*change, false, sources);
    Phrase after = side_cell(*change, true, sources);
    table.add_row(change->line ? line_cell(*change->line) : Phrase{}, std::move(before),
                  std::move(after), step_cell(*change));
  }
  return table;
}

}  // namespace

BriefSection sizes_section(const ChangeSet& set, SourceList& sources) {
  using enum ChangeKind;
  BriefSection section{"sizes", "Sizes", {}, {}};
  const auto pairs = reach_pairs(set);
  if (std::any_of(set.categories.begin(), set.categories.end(), [](const CategorySummary& each) {
        return !each.before.reach.empty() && !each.after.reach.empty() &&
               (each.before.partial || each.after.partial);
      })) {
    section.paragraphs.push_back(Phrase{}.words(
        "Where a capture may lack lines or sizes, the 95% interval (Wilson) of the share of lines "
        "stands in brackets."));
  }
  if (!pairs.empty()) section.tables.push_back(range_table(pairs, sources));
  const ChangeList changes = of_kinds(set, {sizes_widened, sizes_narrowed, size_gap_filled,
                                            size_gap_opened, fit_range_added, fit_range_dropped});
  if (!changes.empty())
    section.tables.push_back(
        sides_table(changes, "line_sizes", "Lines whose sizes changed", sources));
  for (const ReachPair& pair : pairs) {
    if (pair.system == SizeSystem::one_size) continue;
    section.tables.push_back(size_by_size_table(pair));
  }
  return section;
}

BriefSection prices_section(const ChangeSet& set, SourceList& sources) {
  using enum ChangeKind;
  BriefSection section{"prices", "Prices", {}, {}};
  std::vector<LadderPair> pairs;
  for (const CategorySummary& summary : set.categories) {
    for (const LadderPair& pair : ladder_pairs(summary)) pairs.push_back(pair);
  }
  if (!pairs.empty()) section.tables.push_back(ladder_table(pairs, sources));
  BriefTable ladder = price_ladder_table(summaries_of(set, {}), set.coverage.common, sources);
  ladder.folded = true;
  if (!ladder.rows.empty()) section.tables.push_back(std::move(ladder));
  if (auto sentence = was_price_sentence(set, sources)) {
    section.paragraphs.push_back(*std::move(sentence));
  }
  const auto findings = findings_of(set, {});
  if (!findings.empty()) section.tables.push_back(was_price_table(findings, sources));
  ChangeList moves = of_kinds(set, {price_up, price_down});
  if (!moves.empty()) {
    std::vector<Chart> charts = slope_charts(moves);
    section.tables.push_back(
        moves_table(std::move(moves), "full_prices", "Full prices, largest move first", sources));
    section.tables.back().charts = std::move(charts);
  }
  ChangeList marked = of_kinds(set, {marked_down, markdown_changed, markdown_ended});
  if (!marked.empty()) {
    section.tables.push_back(
        moves_table(std::move(marked), "markdowns", "Markdowns, largest move first", sources));
  }
  return section;
}

}  // namespace rangebook
