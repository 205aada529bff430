// What changed between the terms of a shop as of two days.
#pragma once

#include <string_view>
#include <vector>

#include "schema/change.h"
#include "schema/terms_version.h"

namespace rangebook {

/// Changes of the whole shop stand under this word.
inline constexpr std::string_view kTermsCategory = "terms";

/// Which way a field moved for the customer; `before` and `after` are its canonical texts.
/// `neutral` where it depends, or where the field was not stated on one of the days: the shop may
/// have had the rule all along.
TermsDirection terms_direction(std::string_view field, std::string_view before,
                               std::string_view after);

/// A `terms-changed` for each field that differs, in the order of the fields. Delivery and returns
/// are compared only where both days know them: what nobody looked at did not change.
std::vector<Change> diff_terms(const TermsInForce& before, const TermsInForce& after,
                               const CaptureInfo& from, const CaptureInfo& to);

/// Adds them to the changes between two captures, in their order and counted.
void add_terms_changes(const TermsInForce& before, const TermsInForce& after, ChangeSet& set);

}  // namespace rangebook
