// What a reader makes of a policy page, a text or markup: terms it is sure of, and apart from them
// what waits for a yes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "schema/terms.h"

namespace rangebook {

/// What is known about the shop before its policy is read.
struct TermsContext {
  std::string document;              ///< file name, kept as evidence
  std::string country;               ///< the shop's, ISO 3166; empty if not known
  std::optional<Currency> currency;  ///< the shop's: for amounts that name none
  std::optional<Day> observed;       ///< day of the capture: which notices are over
};

/// A value that is not taken without asking: the text leaves it open, or says two things. Saying
/// yes is `set_field(terms, field, text)`; then the evidence goes in as `confirmed`.
struct TermsDoubt {
  std::string field;  ///< full name
  std::string text;   ///< what would be set, in its canonical form
  TermsEvidence
      evidence;  ///< `doubtful`, with the reason, and the other sentence where there is one

  bool operator==(const TermsDoubt&) const = default;
};

struct TermsReading {
  Terms terms;                     ///< `shop` and `observed` are the caller's
  std::vector<TermsDoubt> doubts;  ///< in the order of the document
};

}  // namespace rangebook
