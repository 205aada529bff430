// Tables that have pictures, and the sentences that say what the pictures show.
#pragma once

#include <string>
#include <vector>

#include "reports/brief.h"
#include "reports/brief_sources.h"
#include "reports/change_groups.h"

namespace rangebook {

/// `In dresses, UK: 20 and 22 are new.`
Phrase reach_finding(const std::string& name, const StepsChart& chart);

/// Entry, quartiles, median and top by category, then and now, with a picture a currency.
BriefTable price_ladder_table(const std::vector<const CategorySummary*>& summaries,
                              const Scope& common, SourceList& sources);

/// Full prices that moved, a picture a currency.
std::vector<Chart> slope_charts(ChangeList moves);

/// How the lines then became the lines now.
BriefTable flow_table(const ChangeSet& set);

/// What each capture looked at, by category.
BriefTable coverage_table(const ChangeSet& set);

}  // namespace rangebook
