// The index as a report for people: what sizes, prices and colours, on what terms.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

#include "reports/brief_sources.h"
#include "reports/shop_index_report.h"
#include "reports/size_report_forms.h"
#include "reports/terms_words.h"
#include "reports/wording.h"
#include "schema/shop_name.h"

namespace rangebook {
namespace {

using Entries = std::vector<const ShopEntry*>;

/// The note of a capture; among sources of several shops the shop has to be named.
std::size_t note_of(const ShopEntry& entry, SourceList& sources) {
  const CaptureInfo& capture = *entry.capture;
  const std::string_view name = shop_name(entry.shop);
  const std::string season =
      capture.season.empty() ? std::string(name) : fmt::format("{}, {}", name, capture.season);
  return sources.number({capture.id, capture.on, season, {}, {}});
}

void join(Phrase& phrase, const Phrase& more) {
  if (!phrase.empty()) phrase.words("; ");
  phrase.append(more);
}

Phrase dash_if_empty(const Phrase& phrase) { return phrase.empty() ? Phrase{}.words("-") : phrase; }

Phrase captured_cell(const ShopEntry& entry, SourceList& sources) {
  if (!entry.capture) return Phrase{}.words("no capture");
  Phrase cell;
  if (!entry.capture->season.empty()) cell.name(entry.capture->season).words(", ");
  return cell.day(entry.capture->on).note(note_of(entry, sources));
}

Phrase lines_cell(const ShopEntry& entry) {
  if (!entry.capture) return Phrase{}.words("-");
  if (!entry.looked && entry.sizes.lines == 0) return Phrase{}.words("not looked at");
  Phrase cell = Phrase{}.count(entry.sizes.lines);
  if (entry.sizes.partial) cell.words(", in part");
  return cell;
}

Phrase price_cell(const ShopEntry& entry, MinorUnits PriceLadder::*which) {
  Phrase cell;
  for (const PriceLadder& prices : entry.prices) {
    join(cell, Phrase{}.money({prices.*which, prices.currency}));
  }
  return dash_if_empty(cell);
}

Phrase stated_cell(const ShopEntry& entry) {
  if (!entry.stated) return Phrase{}.words("-");
  return Phrase{}.figure(entry.stated->words).words(", ").day(entry.stated->on);
}

Phrase palette_cell(const ShopEntry& entry) {
  if (entry.palette.known == 0) return Phrase{}.words("-");
  return Phrase{}.words(to_string(lean_of(entry.palette)));
}

/// A picture of the ladders in one currency, where there are two shops to compare.
std::optional<Chart> ladder_chart(const ShopIndex& index, Currency currency, SourceList& sources) {
  LadderChart chart;
  const ShopEntry* lowest = nullptr;
  Money entry_price{0, currency};
  for (const ShopEntry& entry : index.shops) {
    for (const PriceLadder& prices : entry.prices) {
      if (prices.currency != currency) continue;
      chart.rows.push_back({std::string(shop_name(entry.shop)), std::nullopt, prices});
      if (lowest != nullptr && entry_price.minor <= prices.entry) continue;
      lowest = &entry;
      entry_price.minor = prices.entry;
    }
  }
  if (chart.rows.size() < 2 || lowest == nullptr) return {};
  Phrase finding;
  finding.words("Entry prices in ").figure(currency.code());
  if (index.category != "all") finding.words(" of ").name(category_words(index.category));
  finding.words(" are lowest at ").name(shop_name(lowest->shop)).words(": ").money(entry_price);
  return Chart{std::move(finding.note(note_of(*lowest, sources)).words(".")), std::move(chart)};
}

std::vector<Currency> currencies_of(const ShopIndex& index) {
  std::vector<Currency> all;
  for (const ShopEntry& entry : index.shops) {
    for (const PriceLadder& prices : entry.prices) all.push_back(prices.currency);
  }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

BriefTable ranges_table(const ShopIndex& index, SourceList& sources) {
  BriefTable table;
  table.key = "ranges";
  table.caption = "What each range holds, by its latest capture";
  table.whole = true;
  table.columns = {{"shop", "Shop", false},          {"captured", "As captured", false},
                   {"lines", "Lines", true},         {"entry", "Entry price", true},
                   {"median", "Median price", true}, {"sizes", "Sizes found", false},
                   {"palette", "Palette", false}};
  const bool stated = std::any_of(index.shops.begin(), index.shops.end(),
                                  [](const auto& entry) { return entry.stated.has_value(); });
  if (stated) table.columns.push_back({"stated", "Sizes stated", false});
  for (const ShopEntry& entry : index.shops) {
    table.rows.push_back({Phrase{}.name(shop_name(entry.shop)), captured_cell(entry, sources),
                          lines_cell(entry), price_cell(entry, &PriceLadder::entry),
                          price_cell(entry, &PriceLadder::median),
                          dash_if_empty(sizes_phrase(entry.sizes)), palette_cell(entry)});
    if (stated) table.rows.back().push_back(stated_cell(entry));
  }
  for (const Currency currency : currencies_of(index)) {
    if (auto chart = ladder_chart(index, currency, sources)) {
      table.charts.push_back(std::move(*chart));
    }
  }
  return table;
}

Phrase day_cell(const std::optional<Day>& on) {
  return on ? Phrase{}.day(*on) : Phrase{}.words("-");
}

BriefTable terms_table(const ShopIndex& index) {
  BriefTable table;
  table.key = "terms";
  table.caption = "Delivery and returns, as last captured";
  table.whole = true;
  table.columns = {{"shop", "Shop", false},
                   {"delivery", "Delivery", false},
                   {"delivery_on", "As captured", false},
                   {"returns", "Returns", false},
                   {"returns_on", "As captured", false}};
  for (const ShopEntry& entry : index.shops) {
    const TermsInForce& terms = entry.terms;
    if (!terms.delivery_on && !terms.returns_on) continue;
    table.rows.push_back({Phrase{}.name(shop_name(entry.shop)),
                          dash_if_empty(delivery_words(terms.terms)), day_cell(terms.delivery_on),
                          dash_if_empty(returns_words(terms.terms)), day_cell(terms.returns_on)});
  }
  return table;
}

/// The largest size that lines of one system offer, and the shops that have it.
struct Largest {
  std::int32_t high = 0;
  std::string label;
  Entries at;
  std::size_t shops = 0;  // with sizes of the system
};

std::map<SizeSystem, Largest> largest_sizes(const ShopIndex& index) {
  std::map<SizeSystem, Largest> all;
  for (const ShopEntry& entry : index.shops) {
    std::map<SizeSystem, const Size*> own;
    for (const SizeTable& table : entry.sizes.tables) {
      if (table.system == SizeSystem::unknown || table.system == SizeSystem::one_size) continue;
      for (const SizeLine& line : table.sizes) {
        const Size*& best = own[table.system];
        if (line.step.offering == 0) continue;
        if (best == nullptr || best->high < line.step.size.high) best = &line.step.size;
      }
    }
    for (const auto& [system, size] : own) {
      if (size == nullptr) continue;
      Largest& largest = all[system];
      ++largest.shops;
      if (!largest.at.empty() && size->high < largest.high) continue;
      if (largest.at.empty() || size->high > largest.high) {
        largest.at.clear();
        largest.high = size->high;
        largest.label = size->label;
      }
      largest.at.push_back(&entry);
    }
  }
  return all;
}

void add_size_headlines(const ShopIndex& index, SourceList& sources,
                        std::vector<Headline>& headlines) {
  for (const auto& [system, largest] : largest_sizes(index)) {
    if (largest.shops < 2 || largest.at.size() == largest.shops) continue;
    Phrase sentence;
    const std::string prefix(system_words(system));
    sentence.words("The largest size found is ");
    sentence.figure(prefix.empty() ? largest.label : prefix + " " + largest.label).words(", at ");
    for (std::size_t i = 0; i < largest.at.size(); ++i) {
      if (i > 0) sentence.words(i + 1 == largest.at.size() ? " and " : ", ");
      sentence.name(shop_name(largest.at[i]->shop)).note(note_of(*largest.at[i], sources));
    }
    headlines.push_back({Theme::sizes, std::move(sentence.words("."))});
  }
}

std::vector<Headline> headlines_of(const ShopIndex& index, const BriefTable& ranges,
                                   SourceList& sources) {
  std::vector<Headline> headlines;
  add_size_headlines(index, sources, headlines);
  for (const Chart& chart : ranges.charts) {
    headlines.push_back({Theme::entry_prices, chart.finding});
  }
  if (headlines.empty()) {
    Phrase sentence = Phrase{}.figure(counted(index.shops.size(), "shop", "shops"));
    headlines.push_back({Theme::nothing, sentence.words(", each as last captured.")});
  }
  return headlines;
}

}  // namespace

ReportPage shop_index_page(const ShopIndex& index) {
  SourceList sources({}, {});
  ReportPage page;
  page.kind = "Shops side by side";
  page.skip = "Skip to the shops";
  page.title = fmt::format("Shops side by side: {}", category_words(index.category));
  page.heading.figure(counted(index.shops.size(), "shop", "shops"));
  page.under.name(category_words(index.category));
  page.dates.words("Each shop by its latest capture");
  page.captured = page.dates;
  BriefTable ranges = ranges_table(index, sources);
  page.headlines = headlines_of(index, ranges, sources);
  BriefSection section{"ranges", "The ranges", {}, {}};
  section.paragraphs.push_back(
      Phrase{}.words("Prices are the lowest of each line. \"In part\": the capture may lack lines, "
                     "so the true range can be wider. Size systems are never converted."));
  section.tables.push_back(std::move(ranges));
  page.sections.push_back(std::move(section));
  BriefTable terms = terms_table(index);
  if (!terms.rows.empty()) {
    page.sections.push_back({"terms", "The terms", {}, {std::move(terms)}});
  }
  for (const ShopEntry& entry : index.shops) {
    if (entry.capture) page.made = std::max(page.made, entry.capture->on);
  }
  page.sources = sources.take();
  page.cautions = report_cautions(false);
  return page;
}

}  // namespace rangebook
