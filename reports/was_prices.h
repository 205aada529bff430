// What our own captures say of stated "was" prices, in words: beside the shop's claim, and never
// more than was captured.
#pragma once

#include <optional>
#include <vector>

#include "reports/brief.h"
#include "reports/brief_sources.h"
#include "schema/change.h"

namespace rangebook {

/// How many lines were checked and what came of it; nothing where no line is marked down.
std::optional<Phrase> was_price_sentence(const ChangeSet& set, SourceList& sources);

/// A row a finding: the claim, and the lower price with its date.
BriefTable was_price_table(const std::vector<const WasPriceFinding*>& findings,
                           SourceList& sources);

}  // namespace rangebook
