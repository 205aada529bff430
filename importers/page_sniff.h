// Recognising documents that are no HTML page, to say what they are instead.
#pragma once

#include <string_view>

namespace rangebook {

/// What is wrong with a document as a page, and what to do about it.
struct WrongDocument {
  std::string_view what;
  std::string_view how_to_fix;
};

/// Why a document cannot be read as a page; an empty `what` when it can be tried.
WrongDocument wrong_document(std::string_view document);

}  // namespace rangebook
