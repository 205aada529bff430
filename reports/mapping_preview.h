// What an import understood, for reading before anything is kept, and for programs.
#pragma once

#include <string>
#include <vector>

#include "schema/mapping_preview.h"

namespace rangebook {

/// Each document with its columns, what they mean, examples and doubts. Of more than
/// kShownDocuments documents, only those with doubts or conflicts are shown after these.
std::string preview_text(const MappingPreview& preview);
inline constexpr std::size_t kShownDocuments = 12;

/// The documents alone.
std::string documents_text(const std::vector<DocumentPreview>& documents);

/// `rangebook.preview/1`, see schema/FORMAT.md.
std::string preview_json(const MappingPreview& preview);

}  // namespace rangebook
