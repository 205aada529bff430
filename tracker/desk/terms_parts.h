// Fields of terms on a page: the value, the sentence it was read from, and how sure it is.
#pragma once

#include <string>
#include <string_view>

#include "schema/terms_reading.h"
#include "tracker/desk/desk_sheet.h"

namespace rangebook {

/// A value as reports write it: `£60.00`.
std::string terms_value_words(std::string_view value);
/// Every field that is stated.
void terms_fields_table(HtmlWriter& html, const Terms& terms, const std::string& caption);
/// What would be set, why it is asked, and the sentences for and against it.
void terms_doubt(HtmlWriter& html, const TermsDoubt& doubt);
/// What was understood of a policy: its fields, and what would wait for a yes.
void terms_understood(HtmlWriter& html, const TermsReading& reading);
/// `the sentence` in quotation marks with its document; nothing where there is none.
void terms_sentence(HtmlWriter& html, const TermsEvidence& evidence);
/// That terms are as captured, and that law may give more.
void terms_caution(HtmlWriter& html);

}  // namespace rangebook
