// Terms of one shop: as a text to read and edit, and over time.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "schema/terms_version.h"

namespace rangebook {

/// The text form of schema/FORMAT.md, each field with its sentence in a remark. Can be edited and
/// read in again.
std::string terms_in_force_text(const TermsInForce& terms);
/// `"format":"rangebook.terms/1"`.
std::string terms_json(const TermsInForce& terms);

std::string timeline_text(const std::vector<TermsStep>& steps);
/// `"format":"rangebook.terms-timeline/1"`.
std::string timeline_json(std::string_view shop, const std::vector<TermsStep>& steps);

/// A text of the shop on one line, white space folded; at most 300 bytes.
std::string one_line(std::string_view text);

}  // namespace rangebook
