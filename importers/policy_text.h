// Delivery and return terms from a policy: a saved page or a pasted text, in English, German,
// French, Dutch or Spanish. By rules over sentences, not by guess: what a sentence leaves open is a
// doubt, and so is everything the policy says in two ways.
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

/// Terms from an HTML page in UTF-8: what it shows and what its schema.org markup says, which may
/// contradict each other. Of a page that cannot be read as a tree, JSON-LD alone.
TermsReading read_policy_page(std::string_view html, const TermsContext& context);

/// Terms from a document: a page or a text, in the encoding it declares or has. Bytes in the
/// evidence are those of the document. `charset` is what is said of it elsewhere; empty: nothing.
TermsReading read_policy(std::string_view document, const TermsContext& context,
                         std::string_view charset = {});

}  // namespace rangebook
