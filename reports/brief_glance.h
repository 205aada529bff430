// The box a stylist looks at first, and the list she reads numbers from.
#pragma once

#include "reports/brief.h"
#include "reports/brief_sources.h"

namespace rangebook {

/// The shop at a glance: entry prices, sizes stated and found, palette, delivery and returns as
/// they are now, each with its day.
BriefSection glance_section(const ChangeSet& set, const BriefOptions& options, SourceList& sources);

/// Say it right: every figure of the headlines and of the box as it is said aloud, with its source;
/// then, folded, every other figure of `sections`, each once, where it first stands.
BriefSection spoken_section(const std::vector<Headline>& headlines, const BriefSection& glance,
                            const std::vector<BriefSection>& sections);

}  // namespace rangebook
