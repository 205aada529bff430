// Fuzz entry: the shop's country and currency on the first line, then a policy, a page or a text.
// What is read can be written and read again, and nothing doubtful stands among the terms.
#include "importers/policy_text.h"
#include "schema/terms_text.h"
#include "tests/fuzz/require.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const auto [head, document] = first_line(as_text(data, size));
  TermsContext context;
  context.country = head.substr(0, 2);
  context.currency = Currency::from_code(head.substr(head.size() < 3 ? head.size() : 3));
  context.observed = parse_day("2026-09-07");
  const auto reading = read_policy(document, context);
  const auto again = read_terms_text(terms_text(reading.terms));
  require(again.faults.empty(), "terms that were read can be written and read");
  require(again.terms == reading.terms, "reading what was written gives equal terms");
  for (const auto& [field, text] : stated_values(reading.terms)) {
    const auto at = reading.terms.evidence.find(field);
    require(at != reading.terms.evidence.end(), "every field has its sentence");
    require(at->second.confidence == TermsConfidence::stated, "nothing doubtful is taken");
  }
  for (const auto& doubt : reading.doubts) {
    Terms scratch;
    require(!set_field(scratch, doubt.field, doubt.text), "a doubt can be said yes to");
    require(!doubt.evidence.doubt.empty(), "a doubt says why");
  }
  const auto typed = read_terms_text(document, context.currency);
  for (const auto& fault : typed.faults) {
    require(!fault.what.empty() && !fault.how_to_fix.empty(), "a fault says what and how to fix");
  }
  require(read_terms_text(terms_text(typed.terms)).terms == typed.terms, "typed terms round-trip");
  return 0;
}
