// The section of a brief about colours as a whole: how many colourways are warm, light, or unknown.
#include <fmt/format.h>

#include <algorithm>

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
  phrase.figure(std::to_string(palette.known)).words(" of ");
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
    shown.push_back(Phrase{}.figure(std::to_string(names.size() - kShownNames)).words(" more"));
  return joined(shown);
}

/// What the counts above leave out, so that they add up.
Phrase left_out_phrase(std::string_view side, const Palette& palette, std::size_t note) {
  Phrase phrase;
  phrase.label(side).words(" ").figure(std::to_string(palette.several));
  phrase.words(" in several colours, ").figure(counted(palette.prints, "print", "prints"));
  phrase.words(", ");
  phrase.figure(std::to_string(palette.by_family)).words(" known by family only, ");
  phrase.figure(std::to_string(palette.unknown)).words(" with a colour name that is not known");
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
  return section;
}

}  // namespace rangebook
