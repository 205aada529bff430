// The sections of a brief below its headlines, each a function of the change set.
#pragma once

#include <vector>

#include "reports/brief.h"
#include "reports/brief_sources.h"
#include "reports/change_groups.h"

namespace rangebook {

/// All sections that have something to say, in reading order. `looked-at` is always there.
std::vector<BriefSection> brief_sections(const ChangeSet& set, const BriefOptions& options,
                                         SourceList& sources);

/// Sizes: range by category then and now, size by size, and the lines whose sizes changed.
BriefSection sizes_section(const ChangeSet& set, SourceList& sources);
/// Prices: by category, then full prices and markdowns line by line, largest move first.
BriefSection prices_section(const ChangeSet& set, SourceList& sources);
/// Palette: warm, cool and neutral, light, medium and deep colourways then and now, and what is not
/// known of them.
BriefSection palette_section(const std::vector<PalettePair>& palettes, SourceList& sources);

/// Fibres: what the stated compositions are made of, then and now.
BriefSection fabric_section(const ChangeSet& set, const std::optional<FibrePair>& fibres,
                            SourceList& sources);

/// Cells shared by the tables of lines.
Phrase line_cell(const LineRef& line);
Phrase side_cell(const Change& change, bool after, SourceList& sources);
/// Then and now of each change, in the order given.
BriefTable sides_table(const ChangeList& changes, std::string key, std::string caption,
                       SourceList& sources);

}  // namespace rangebook
