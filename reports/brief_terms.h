// Delivery and returns in the brief.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "reports/brief.h"
#include "reports/brief_sources.h"

namespace rangebook {

/// `standard delivery: fee`, `return window (EU)`: a field of terms in plain words.
std::string terms_field_words(std::string_view field);

/// A value of terms; an amount of money knows what it is.
Phrase terms_value_phrase(std::string_view text);

/// The headline about terms, if any changed: what became worse or better for the customer.
void add_terms_headline(std::vector<Headline>& out, const ChangeSet& set, SourceList& sources);

/// What changed, the sentences it was read from, and what held when (`steps`, all versions).
BriefSection terms_section(const ChangeSet& set, const std::vector<TermsStep>& steps,
                           SourceList& sources);

}  // namespace rangebook
