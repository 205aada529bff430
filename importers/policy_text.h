// Delivery and return terms from a policy: a saved page or a pasted text, in English, German,
// French or Dutch. By rules over sentences, not by guess: what a sentence leaves open is a doubt,
// and so is everything the policy says in two ways.
//
// Left out on purpose: the legal right of withdrawal (it is not the shop's own window), faulty
// goods, examples, questions.
#pragma once

#include <cstddef>
#include <string_view>

#include "schema/terms_reading.h"

namespace rangebook {

/// Larger policies are cut off here.
inline constexpr std::size_t kMaxPolicyBytes = std::size_t{4} << 20U;

/// Terms from a plain text in UTF-8.
TermsReading read_policy_text(std::string_view text, const TermsContext& context);

/// Terms from what an HTML page in UTF-8 shows (its markup: terms_markup.h). A page that cannot be
/// read as a tree gives nothing.
TermsReading read_policy_page(std::string_view html, const TermsContext& context);

}  // namespace rangebook
