// Sentences, one place for each.
#include "importers/page_remarks.h"

#include <fmt/format.h>

#include <algorithm>

namespace rangebook {

void explain(const JsonProblem& problem, bool cut, Rejection& rejection) {
  switch (problem.kind) {
    case JsonProblem::Kind::not_json:
      rejection.kind = RejectionKind::bad_markup;
      rejection.what = cut ? "The product markup (JSON-LD) breaks off: the page ends too early."
                           : "The product markup (JSON-LD) is not valid JSON from here on.";
      rejection.how_to_fix =
          "Save the page again; if it stays, the shop's page is at fault: type the line into a "
          "CSV.";
      break;
    case JsonProblem::Kind::too_deep:
      rejection.kind = RejectionKind::bad_markup;
      rejection.what = fmt::format(
          "The product markup (JSON-LD) is nested more than {} levels deep.", kMaxJsonDepth);
      rejection.how_to_fix = "This is no product markup; type the line into a CSV.";
      break;
    case JsonProblem::Kind::too_large:
      rejection.kind = RejectionKind::over_limit;
      rejection.what =
          fmt::format("The product markup (JSON-LD) has more than {} MiB or {} values.",
                      kMaxJsonBytes >> 20U, kMaxJsonValues);
      rejection.how_to_fix = "Save the pages of single products instead.";
      break;
  }
}

std::string first_with_prices(const std::vector<SyntaxRows>& all) {
  const SyntaxRows* first = nullptr;
  for (const auto& syntax : all) {
    const bool priced = std::any_of(syntax.rows.begin(), syntax.rows.end(),
                                    [](const auto& row) { return !row[Field::price].empty(); });
    if (priced && (first == nullptr || syntax.syntax < first->syntax)) first = &syntax;
  }
  return first == nullptr ? "" : std::string(to_string(first->syntax));
}

Rejection missing_scripts(const std::string& priced) {
  Rejection remark;
  remark.kind = RejectionKind::bad_markup;
  remark.refused = Refused::nothing;
  remark.what = fmt::format(
      "Scripts are missing from this saved page, and with them any product markup in JSON-LD: "
      "browsers leave them out of MHTML. {}.",
      priced.empty() ? "No price was found in what is left"
                     : fmt::format("Prices were read from the page's {}", priced));
  remark.how_to_fix =
      "Compare the figures with the page; saved as \"Web page, HTML only\" it keeps its markup.";
  return remark;
}

}  // namespace rangebook
