// Words about "was" prices.
#include "reports/was_prices.h"

#include <fmt/format.h>

#include "reports/brief_sections.h"
#include "reports/wording.h"

namespace rangebook {
namespace {

Phrase lowest_cell(const WasPriceFinding& finding, SourceList& sources) {
  Phrase cell;
  cell.money(finding.lowest).note(sources.number(finding.lowest_at));
  cell.words(" on ").day(finding.lowest_at.on);
  if (finding.lowest_was_marked_down) cell.words(", marked down then too");
  return cell;
}

Phrase marked_cell(const WasPriceFinding& finding, SourceList& sources) {
  PriceFact price = finding.marked;
  price.full.reset();
  return fact_phrase(price, false).note(sources.number(finding.marked_at));
}

/// Counts that are 0 are left out.
void add_count(Phrase& sentence, std::uint32_t lines, std::string_view what) {
  if (lines == 0) return;
  sentence.words("; ").figure(lines_words(lines)).words(what);
}

}  // namespace

std::optional<Phrase> was_price_sentence(const ChangeSet& set, SourceList& sources) {
  if (!set.was_prices || set.was_prices->marked_down == 0) return std::nullopt;
  const WasPriceCheck& check = *set.was_prices;
  Phrase sentence;
  sentence.words("\"Was\" prices against our own captures of the ");
  sentence.figure(fmt::format("{} days", kWasPriceDays)).words(" before each markdown: ");
  sentence.figure(lines_words(check.marked_down)).words(" marked down").note(sources.now());
  add_count(sentence, check.lower, " with a lower price captured than the \"was\" price stated");
  add_count(sentence, check.not_lower, " with prices captured, none of them lower");
  add_count(sentence, check.not_checked, " not checked: no capture in those days shows the price");
  return sentence.words(".");
}

BriefTable was_price_table(const std::vector<const WasPriceFinding*>& findings,
                           SourceList& sources) {
  BriefTable table;
  table.key = "was_prices";
  table.caption =
      fmt::format("Lower prices captured in the {} days before a markdown than its \"was\" price",
                  kWasPriceDays);
  table.columns = {{"line", "Line", false},
                   {"now", "Now", true},
                   {"stated_was", "Stated \"was\"", true},
                   {"lowest", "Captured before", false},
                   {"marked_since", "Marked down since at latest", false}};
  for (const WasPriceFinding* finding : findings) {
    table.rows.push_back({line_cell(finding->line), marked_cell(*finding, sources),
                          Phrase{}.money(*finding->marked.full), lowest_cell(*finding, sources),
                          Phrase{}.day(finding->marked_since)});
  }
  return table;
}

}  // namespace rangebook
