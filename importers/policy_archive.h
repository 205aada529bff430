// Policies saved as one file (MHTML): the page is taken out of the file and read like any other.
#pragma once

#include <string_view>
#include <variant>

#include "importers/record_source.h"
#include "schema/terms_reading.h"

namespace rangebook {

/// True for a document that begins with the headers of a web archive.
bool is_policy_archive(std::string_view document);

/// Terms from the page of a web archive, or why there is none. Bytes in the evidence are those of
/// the file: of the line the sentence begins in.
std::variant<TermsReading, DocumentFault> read_policy_archive(std::string_view document,
                                                              const TermsContext& context);

}  // namespace rangebook
