// Puts the brief together.
#include "reports/brief.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "reports/brief_formats.h"
#include "reports/brief_glance.h"
#include "reports/brief_headlines.h"
#include "reports/brief_sections.h"
#include "reports/brief_sources.h"
#include "reports/wording.h"
#include "schema/names.h"
#include "schema/shop_name.h"

namespace rangebook {
namespace {

constexpr std::size_t kThemes = 13;

constexpr NameTable<Theme, kThemes> kThemeNames{{
    {Theme::sizes, "sizes"},
    {Theme::terms, "terms"},
    {Theme::prices, "prices"},
    {Theme::entry_prices, "entry-prices"},
    {Theme::markdowns, "markdowns"},
    {Theme::new_lines, "new-lines"},
    {Theme::returned, "returned"},
    {Theme::gone, "gone"},
    {Theme::colours, "colours"},
    {Theme::fabric, "fabric"},
    {Theme::stock, "stock"},
    {Theme::identity, "identity"},
    {Theme::nothing, "nothing"},
}};

constexpr NameTable<Theme, kThemes> kThemeWords{{
    {Theme::sizes, "Sizes"},
    {Theme::terms, "Terms"},
    {Theme::prices, "Prices"},
    {Theme::entry_prices, "Entry prices"},
    {Theme::markdowns, "Markdowns"},
    {Theme::new_lines, "New"},
    {Theme::returned, "Back"},
    {Theme::gone, "Gone"},
    {Theme::colours, "Colours"},
    {Theme::fabric, "Fabric"},
    {Theme::stock, "Stock"},
    {Theme::identity, "Same line"},
    {Theme::nothing, "In all"},
}};

constexpr std::string_view kCapturedCaution =
    "Prices, sizes and terms as captured on the dates shown; shops change them at any time.";
constexpr std::string_view kRightsCaution =
    "Statutory rights differ by country: check local law and the shop's own page.";
constexpr std::string_view kInventedCaution = "This data is invented.";

}  // namespace

std::string_view to_string(Theme theme) { return name_of(kThemeNames, theme); }
std::string_view theme_words(Theme theme) { return name_of(kThemeWords, theme); }

Brief make_brief(const ChangeSet& set, const BriefOptions& options) {
  Brief brief{set.shop, set.from, set.to, options.invented, {}, {}, {}, {}};
  SourceList sources(set.from, set.to);
  brief.headlines = brief_headlines(set, sources);
  BriefSection glance = glance_section(set, options, sources);
  std::vector<BriefSection> sections = brief_sections(set, options, sources);
  BriefSection spoken = spoken_section(brief.headlines, glance, sections);
  if (!glance.tables.empty()) brief.sections.push_back(std::move(glance));
  std::move(sections.begin(), sections.end(), std::back_inserter(brief.sections));
  if (!spoken.tables.empty()) brief.sections.push_back(std::move(spoken));
  brief.sources = sources.take();
  brief.cautions = report_cautions(options.invented);
  return brief;
}

std::vector<std::string> top_sentences(const Brief& brief, std::size_t n) {
  std::vector<std::string> sentences;
  for (const Headline& headline : brief.headlines) {
    if (sentences.size() == n) break;
    sentences.push_back(plain_text(headline.sentence, false));
  }
  return sentences;
}

std::vector<std::string> report_cautions(bool invented) {
  std::vector<std::string> cautions{std::string(kCapturedCaution), std::string(kRightsCaution)};
  if (invented) cautions.insert(cautions.begin(), std::string(kInventedCaution));
  return cautions;
}

ReportPage page_of(Brief brief) {
  const auto dates = [&brief](std::string_view verb, std::string_view between) {
    Phrase phrase;
    phrase.name(brief.to.season).words(verb).day(brief.to.on).words(between);
    return phrase.name(brief.from.season).words(verb).day(brief.from.on);
  };
  ReportPage page;
  page.kind = "Range brief";
  page.skip = "Skip to the brief";
  page.title = brief_title(brief);
  page.heading.name(shop_name(brief.shop));
  page.under.name(capture_words(brief.to, brief.from)).words(" against ");
  page.under.name(capture_words(brief.from, brief.to));
  page.dates = dates(" captured ", ", ");
  page.captured = dates(" captured ", "; ");
  page.headline_dates = dates(", ", "; ");
  page.invented = brief.invented;
  page.made = brief.to.on;
  page.headlines = std::move(brief.headlines);
  page.sections = std::move(brief.sections);
  page.sources = std::move(brief.sources);
  page.cautions = std::move(brief.cautions);
  return page;
}

std::string brief_text(Brief brief) { return page_text(page_of(std::move(brief))); }
std::string brief_markdown(Brief brief) { return page_markdown(page_of(std::move(brief))); }
std::string brief_html(Brief brief) { return page_html(page_of(std::move(brief))); }

std::string brief_title(const Brief& brief) {
  return fmt::format("{}: {} against {}", shop_name(brief.shop),
                     capture_words(brief.to, brief.from), capture_words(brief.from, brief.to));
}

}  // namespace rangebook
