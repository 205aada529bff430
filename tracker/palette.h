// Palettes of captures: a pure function of the snapshot.
#pragma once

#include <vector>

#include "schema/capture.h"
#include "schema/palette.h"
#include "schema/snapshot.h"
#include "tracker/colour_reader.h"

namespace rangebook {

/// The palette of the whole capture (`all`, always there) and of each category with a line in it,
/// by slug. Lines outside `within` are left out. A colour name that a line spells twice counts
/// once.
std::vector<CategoryPalette> palettes_of(const Snapshot& snapshot, const Scope& within = {},
                                         const ColourOverrides& overrides = {});

/// Both captures side by side, `all` first, then by slug, within what both looked at.
std::vector<PalettePair> compare_palettes(const Snapshot& from, const Snapshot& to,
                                          const Scope& common);

}  // namespace rangebook
