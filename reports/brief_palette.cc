// The section of a brief about colours as a whole: how many colourways are warm, light, or unknown.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "reports/brief_sections.h"
#include "reports/change_groups.h"
#include "reports/wording.h"
#include "schema/palette.h"

namespace rangebook {
namespace {

constexpr std::size_t kShownNames = 5;

/// `12 warm, 20 cool, 8 neutral`; with percentages where there is room for them.
template <typename Enum>
std::string counts_words(const std::array<std::uint32_t, 3>& counts, const Palette& palette,
                         bool percent) {
  std::string text;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    if (i > 0) text += ", ";
    text += fmt::format("{} {}", counts[i], to_string(Enum(i)));
    if (!percent || palette.known == 0) continue;
    const auto share = (counts[i] * std::int64_t{1000} + palette.known / 2) / palette.known;
    text += fmt::format(" ({})", percent_words(share, false));
  }
  return text;
}

std::string colourways_words(std::uint32_t count) {
  return counted(count, "colourway", "colourways");
}

std::string lean_words(PaletteLean lean) {
  switch (lean) {
    case PaletteLean::warm:
    case PaletteLean::cool:
      return fmt::format("The palette leans {}.", to_string(lean));
    case PaletteLean::balanced:
      return "Warm and cool are balanced.";
    case PaletteLean::unclear:
      return "Too few warm or cool colourways to say where the palette leans.";
  }
  return {};
}

Phrase palette_phrase(std::string_view side, const Palette& palette, std::size_t note) {
  Phrase phrase;
  phrase.label(side).words(" ");
  if (palette.colourways == 0) return phrase.words("no line states a colour.").note(note);
  phrase.count(palette.known).words(" of ");
  phrase.figure(colourways_words(palette.colourways)).words(" have one known colour").note(note);
  if (palette.known == 0) return phrase.words(".");
  phrase.words(": ").figure(counts_words<Undertone>(palette.undertones, palette, true));
  phrase.words("; ").figure(counts_words<ColourValue>(palette.values, palette, true)).words(". ");
  return phrase.words(lean_words(lean_of(palette)));
}

Phrase names_phrase(const std::vector<std::string>& names) {
  std::vector<Phrase> shown;
  for (std::size_t i = 0; i < std::min(kShownNames, names.size()); ++i)
    shown.push_back(Phrase{}.name(names[i]));
  if (names.size() > kShownNames)
    shown.push_back(Phrase{}.count(names.size() - kShownNames).words(" more"));
  return joined(shown);
}

/// What the counts above leave out, so that they add up.
Phrase left_out_phrase(std::string_view side, const Palette& palette, std::size_t note) {
  Phrase phrase;
  phrase.label(side).words(" ").count(palette.several);
  phrase.words(" in several colours, ").figure(counted(palette.prints, "print", "prints"));
  phrase.words(", ");
  phrase.count(palette.by_family).words(" known by family only, ");
  phrase.count(palette.unknown).words(" with a colour name that is not known");
  if (!palette.unknown_names.empty())
    phrase.words(" (").append(names_phrase(palette.unknown_names)).words(")");
  if (palette.without_colour > 0) {
    phrase.words("; ").figure(lines_words(palette.without_colour));
    phrase.words(palette.without_colour == 1 ? " states no colour" : " state no colour");
  }
  return phrase.note(note).words(".");
}

template <typename Enum>
Phrase counts_cell(const std::array<std::uint32_t, 3>& counts, const Palette& palette) {
  if (palette.known == 0) return Phrase{}.figure("none");
  return Phrase{}.figure(counts_words<Enum>(counts, palette, false));
}

BriefTable palette_table(const std::vector<PalettePair>& palettes) {
  BriefTable table;
  table.key = "palette_by_category";
  table.caption = "Colourways with one known colour, by category";
  table.columns = {{"category", "Category", false},
                   {"undertone_then", "Undertone, then", false},
                   {"undertone_now", "Undertone, now", false},
                   {"value_then", "Value, then", false},
                   {"value_now", "Value, now", false}};
  table.folded = true;
  for (const PalettePair& pair : palettes) {
    table.rows.push_back({Phrase{}.name(category_words(pair.category)),
                          counts_cell<Undertone>(pair.before.undertones, pair.before),
                          counts_cell<Undertone>(pair.after.undertones, pair.after),
                          counts_cell<ColourValue>(pair.before.values, pair.before),
                          counts_cell<ColourValue>(pair.after.values, pair.after)});
  }
  return table;
}

/// Both captures' colours by name, those of the later one first.
std::vector<ColoursChart::Dot> dots_of(const PalettePair& all) {
  std::vector<ColoursChart::Dot> dots;
  std::map<std::string, std::size_t> places;
  const auto add = [&](const PaletteColour& each) -> ColoursChart::Dot& {
    const auto [place, is_new] = places.try_emplace(each.name, dots.size());
    if (is_new) dots.push_back({each.name, each.colour, each.hue, each.lightness, each.grey, 0, 0});
    return dots[place->second];
  };
  for (const PaletteColour& each : all.after.colours) add(each).now += each.colourways;
  for (const PaletteColour& each : all.before.colours) add(each).then += each.colourways;
  return dots;
}

Phrase drift_finding(const std::vector<ColoursChart::Dot>& dots) {
  const auto count = [&dots](auto is) {
    return static_cast<std::size_t>(std::count_if(dots.begin(), dots.end(), is));
  };
  Phrase finding;
  finding.figure(counted(count([](const auto& dot) { return dot.now > 0; }), "colour", "colours"));
  finding.words(" now; ").count(count([](const auto& dot) { return dot.then == 0; }));
  finding.words(" new, ").count(count([](const auto& dot) { return dot.now == 0; }));
  return finding.words(" gone.");
}

BriefTable colours_table(const PalettePair& all) {
  BriefTable table;
  table.key = "colours_known";
  table.caption = "Colourways by colour";
  table.columns = {{"colour", "Colour", false},
                   {"value", "Colour value", false},
                   {"then", "Then", true},
                   {"now", "Now", true}};
  table.folded = true;
  ColoursChart chart{dots_of(all)};
  for (const auto& dot : chart.dots) {
    table.rows.push_back({Phrase{}.name(dot.name), Phrase{}.figure(to_string(dot.colour)),
                          Phrase{}.count(dot.then), Phrase{}.count(dot.now)});
  }
  Phrase finding = drift_finding(chart.dots);
  table.charts.push_back({std::move(finding), std::move(chart)});
  return table;
}

}  // namespace

BriefSection palette_section(const std::vector<PalettePair>& palettes, SourceList& sources) {
  BriefSection section{"palette", "Palette", {}, {}};
  if (palettes.empty()) return section;
  const PalettePair& all = palettes.front();
  if (all.before.colourways + all.after.colourways == 0) return section;
  auto& paragraphs = section.paragraphs;
  paragraphs.push_back(palette_phrase("Now:", all.after, sources.now()));
  paragraphs.push_back(palette_phrase("Then:", all.before, sources.then()));
  if (all.after.colourways > all.after.known)
    paragraphs.push_back(left_out_phrase("Not among them, now:", all.after, sources.now()));
  if (all.before.colourways > all.before.known)
    paragraphs.push_back(left_out_phrase("Not among them, then:", all.before, sources.then()));
  paragraphs.push_back(Phrase{}.words(
      "A colourway is a line in one colour. Colours are read from their names, and a name stands "
      "for "
      "a typical colour, not for this shop's cloth. Warm is yellow-based, cool is blue-based."));
  section.tables.push_back(palette_table(palettes));
  BriefTable colours = colours_table(all);
  if (!colours.rows.empty()) section.tables.push_back(std::move(colours));
  return section;
}

}  // namespace rangebook
