// What was looked at, and the sections that list lines.
#include "reports/brief_sections.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "reports/brief_charts.h"
#include "reports/brief_terms.h"
#include "reports/change_groups.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

std::string scope_words(const Scope& scope) {
  switch (scope.kind) {
    case Scope::Kind::all:
      return "the whole range";
    case Scope::Kind::picks:
      return "picks only";
    case Scope::Kind::categories: {
      std::vector<Phrase> items;
      for (const auto& slug : scope.categories)
        items.push_back(Phrase{}.name(category_words(slug)));
      return plain_text(joined(items), false);
    }
  }
  return {};
}

Phrase documents_cell(const CaptureInfo& capture) {
  constexpr std::size_t kShownHash = 12;
  constexpr std::size_t kShown = 3;
  const std::size_t count = capture.documents.size();
  std::vector<Phrase> items;
  for (std::size_t i = 0; i < std::min(count, kShown); ++i) {
    const DocumentInfo& document = capture.documents[i];
    items.push_back(Phrase{}.name(document.name));
    items.back().words(" (SHA-256 begins ").code(document.sha256.substr(0, kShownHash)).words(")");
  }
  if (count > kShown) {
    items.push_back(Phrase{}.count(count - kShown).words(" more"));
  }
  return joined(items);
}

/// One column a capture, so that the table stays readable on a telephone.
BriefTable captures_table(const ChangeSet& set, SourceList& sources) {
  const CaptureInfo& then = set.from;
  const CaptureInfo& now = set.to;
  const auto count = [](std::uint32_t n) { return Phrase{}.count(n); };
  BriefTable table;
  table.key = "captures";
  table.caption = "The two captures";
  table.columns = {{"what", "Capture", false}, {"then", "Then", false}, {"now", "Now", false}};
  const auto add = [&table](std::string_view what, Phrase before, Phrase after) {
    table.rows.push_back({Phrase{}.words(what), std::move(before), std::move(after)});
  };
  add("Season", Phrase{}.name(then.season).note(sources.then()),
      Phrase{}.name(now.season).note(sources.now()));
  add("Date", Phrase{}.day(then.on), Phrase{}.day(now.on));
  add("Looked at", Phrase{}.name(scope_words(then.scope)), Phrase{}.name(scope_words(now.scope)));
  add("Lines", count(set.reconciliation.lines_then), count(set.reconciliation.lines_now));
  add("Rows refused", count(set.coverage.rows_refused_then), count(set.coverage.rows_refused_now));
  add("Documents", documents_cell(then), documents_cell(now));
  return table;
}

/// The columns of a list of lines; `last` columns follow the line itself.
BriefTable lines_table(std::string key, std::string caption, std::vector<BriefColumn> last) {
  BriefTable table;
  table.key = std::move(key);
  table.caption = std::move(caption);
  table.columns = {{"line", "Line", false}};
  table.columns.insert(table.columns.end(), last.begin(), last.end());
  return table;
}

Phrase only_side(const Change& change, SourceList& sources) {
  Phrase cell = change.line ? line_cell(*change.line) : Phrase{};
  sources.cite(cell, change.evidence.after ? change.evidence.after : change.evidence.before);
  return cell.append(related_phrase(change));
}

/// Lines with their category, sorted by category and otherwise as in the change set.
BriefTable presence_table(const ChangeSet& set, ChangeKind kind, std::string key,
                          std::string caption, SourceList& sources) {
  ChangeList changes = of_kinds(set, {kind});
  std::stable_sort(changes.begin(), changes.end(), [](const Change* a, const Change* b) {
    return a->line && b->line && a->line->category < b->line->category;
  });
  BriefTable table =
      lines_table(std::move(key), std::move(caption), {{"category", "Category", false}});
  for (const Change* change : changes) {
    if (!change->line) continue;
    Phrase category;
    category.name(category_words(change->line->category));
    table.add_row(only_side(*change, sources), std::move(category));
  }
  return table;
}

/// What the comparison says nothing about, one paragraph a note; as prominent as what it does say.
void add_not_looked_at(std::vector<Phrase>& paragraphs, const ChangeSet& set) {
  Phrase first;
  first.label("Not looked at or not stated:").words(" ");
  if (set.coverage.notes.empty()) paragraphs.push_back(first.words("nothing was left out."));
  for (const auto& note : set.coverage.notes) {
    paragraphs.push_back(std::exchange(first, Phrase{}).name(note));
  }
}

BriefSection looked_at_section(const ChangeSet& set, SourceList& sources) {
  BriefSection section{"looked-at", "What was looked at, and what was not", {}, {}};
  Phrase looked;
  looked.label("Looked at in both captures:").words(" ").name(scope_words(set.coverage.common));
  looked.words("; ").figure(lines_words(set.coverage.lines_compared)).words(" compared.");
  section.paragraphs.push_back(std::move(looked));
  add_not_looked_at(section.paragraphs, set);
  section.paragraphs.push_back(lines_now_phrase(set.reconciliation).note(sources.now()).words("."));
  section.paragraphs.push_back(
      lines_then_phrase(set.reconciliation).note(sources.then()).words("."));
  section.tables.push_back(captures_table(set, sources));
  section.tables.push_back(flow_table(set));
  BriefTable covered = coverage_table(set);
  if (!covered.rows.empty()) section.tables.push_back(std::move(covered));
  BriefTable missed = presence_table(set, ChangeKind::line_not_covered, "not_looked_at",
                                     "Lines nobody looked for this time", sources);
  if (!missed.rows.empty()) section.tables.push_back(std::move(missed));
  return section;
}

BriefSection presence_section(const ChangeSet& set, ChangeKind kind, const std::string& id,
                              std::string heading, std::string caption, SourceList& sources) {
  BriefSection section{id, std::move(heading), {}, {}};
  BriefTable table = presence_table(set, kind, id, std::move(caption), sources);
  if (!table.rows.empty()) section.tables.push_back(std::move(table));
  return section;
}

BriefSection returned_section(const ChangeSet& set, SourceList& sources) {
  BriefSection section{"returned", "Lines back", {}, {}};
  BriefTable table =
      lines_table("returned", "Lines missing last time that were known before",
                  {{"known_as", "Known as", false}, {"last_seen", "Last seen", false}});
  for (const Change* change : of_kinds(set, {ChangeKind::line_returned})) {
    Phrase seen;
    if (const auto& before = change->evidence.before) {
      seen.name(before->season).words(", ").day(before->on);
    }
    table.rows.push_back(
        {only_side(*change, sources), side_cell(*change, false, sources), std::move(seen)});
  }
  if (!table.rows.empty()) section.tables.push_back(std::move(table));
  return section;
}

BriefSection sides_section(const ChangeSet& set, std::initializer_list<ChangeKind> kinds,
                           const std::string& id, std::string heading, std::string caption,
                           SourceList& sources) {
  BriefSection section{id, std::move(heading), {}, {}};
  const ChangeList changes = of_kinds(set, kinds);
  if (!changes.empty()) {
    section.tables.push_back(sides_table(changes, id, std::move(caption), sources));
  }
  return section;
}

BriefSection identity_section(const ChangeSet& set, SourceList& sources) {
  using enum ChangeKind;
  BriefSection section = sides_section(
      set, {line_renamed, line_recoded, category_moved}, "identity", "Renamed, recoded, moved",
      "The same line under another name, code or category", sources);
  if (section.tables.empty()) return section;
  BriefTable& table = section.tables.front();
  table.columns.push_back({"why", "Why the same line", false});
  const ChangeList changes = of_kinds(set, {line_renamed, line_recoded, category_moved});
  for (std::size_t i = 0; i < changes.size(); ++i) {
    table.rows[i].push_back(Phrase{}.name(changes[i]->evidence.link));
  }
  return section;
}

/// Main parts only: linings and trims are not what is felt first.
BriefTable fibres_table(const FibrePair& pair) {
  BriefTable table;
  table.key = "fibres";
  table.caption = "Mean share of each fibre in the main part of a line, where it is stated";
  table.columns = {{"fibre", "Fibre", false}, {"then", "Then", true}, {"now", "Now", true}};
  table.folded = true;
  BarsChart chart;
  const FibreRow* most = nullptr;
  for (const FibreRow& row : pair.rows) {
    table.rows.push_back(
        {Phrase{}.name(row.name), Phrase{}.share(row.then), Phrase{}.share(row.now)});
    chart.rows.push_back({row.name, row.then, row.now});
    const auto move = [](const FibreRow& each) {
      return std::abs(std::int64_t{each.now} - std::int64_t{each.then});
    };
    if (row.is_origin) continue;
    if (most == nullptr || move(row) > move(*most)) most = &row;
  }
  Phrase finding;
  if (most == nullptr || most->then == most->now) {
    finding.words("The fibres stated are the same in both captures.");
  } else {
    finding.words("The share of ")
        .name(most->name)
        .words(" moved most: from ")
        .share(most->then)
        .words(" to ");
    finding.share(most->now).words(" of the mean line.");
  }
  table.charts.push_back({std::move(finding), std::move(chart)});
  return table;
}

}  // namespace

BriefSection fabric_section(const ChangeSet& set, const std::optional<FibrePair>& fibres,
                            SourceList& sources) {
  BriefSection section = sides_section(set, {ChangeKind::composition_changed}, "fabric", "Fabric",
                                       "Stated composition, as the shop words it", sources);
  if (!fibres || fibres->rows.empty()) return section;
  Phrase counted_lines;
  counted_lines.words("A main part that adds up to 100% is stated by ");
  counted_lines.count(fibres->stated_now).words(" of ").figure(lines_words(fibres->lines_now));
  counted_lines.note(sources.now()).words("; then by ").count(fibres->stated_then).words(" of ");
  counted_lines.count(fibres->lines_then).note(sources.then()).words(".");
  section.paragraphs.push_back(std::move(counted_lines));
  section.tables.push_back(fibres_table(*fibres));
  return section;
}

Phrase line_cell(const LineRef& line) {
  Phrase cell;
  cell.name(line_words(line));
  if (!line.code.empty() && line_words(line) != line.code) cell.words(" ").code(line.code);
  return cell;
}

Phrase side_cell(const Change& change, bool after, SourceList& sources) {
  Phrase cell = side_phrase(change.kind, after ? change.after : change.before);
  sources.cite(cell, after ? change.evidence.after : change.evidence.before);
  return cell;
}

BriefTable sides_table(const ChangeList& changes, std::string key, std::string caption,
                       SourceList& sources) {
  BriefTable table =
      lines_table(std::move(key), std::move(caption),
                  {{"what", "What", false}, {"then", "Then", false}, {"now", "Now", false}});
  for (const Change* change : changes) {
    Phrase what;
    what.words(change_words(change->kind)).append(related_phrase(*change));
    Phrase before = side_cell(*change, false, sources);
    Phrase after = side_cell(*change, true, sources);
    table.add_row(change->line ? line_cell(*change->line) : Phrase{}, std::move(what),
                  std::move(before), std::move(after));
  }
  return table;
}

std::vector<BriefSection> brief_sections(const ChangeSet& set, const BriefOptions& options,
                                         SourceList& sources) {
  using enum ChangeKind;
  std::vector<BriefSection> all;
  all.push_back(looked_at_section(set, sources));
  all.push_back(sizes_section(set, sources));
  all.push_back(terms_section(set, options.terms_steps, sources));
  all.push_back(prices_section(set, sources));
  all.push_back(presence_section(set, line_new, "new", "New lines",
                                 "Lines that were not there last time", sources));
  all.push_back(returned_section(set, sources));
  all.push_back(presence_section(set, line_dropped, "gone", "Lines gone",
                                 "Lines looked for and not found", sources));
  all.push_back(identity_section(set, sources));
  all.push_back(sides_section(set, {colour_added, colour_dropped}, "colours", "Colours",
                              "Colours added and gone", sources));
  all.push_back(palette_section(options.palettes, sources));
  all.push_back(fabric_section(set, options.fibres, sources));
  all.push_back(sides_section(set, {stock_out, stock_back}, "stock", "Stock",
                              "Lines sold out or back, by variants whose stock is stated",
                              sources));
  std::erase_if(all, [](const BriefSection& section) {
    return section.paragraphs.empty() && section.tables.empty();
  });
  return all;
}

}  // namespace rangebook
