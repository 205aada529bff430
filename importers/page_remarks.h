// What is said of a page as a whole, in words.
#pragma once

#include <string>
#include <vector>

#include "importers/json_tree.h"
#include "importers/page_merge.h"
#include "schema/rejection.h"

namespace rangebook {

/// Kind, sentence and remedy for a block of JSON-LD that is none; `cut` when the page ends in it.
void explain(const JsonProblem& problem, bool cut, Rejection& rejection);

/// The syntax whose prices decide, as in a message; empty when none has prices.
std::string first_with_prices(const std::vector<SyntaxRows>& all);

/// That a page lost its scripts, and where its prices were read instead. Refuses nothing.
Rejection missing_scripts(const std::string& priced);

}  // namespace rangebook
