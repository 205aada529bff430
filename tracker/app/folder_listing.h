// The documents in a folder and the folders inside it, without the parts of saved pages.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "importers/saved_page.h"

namespace rangebook {

/// A folder with more documents than this, with the folders inside, is refused.
inline constexpr std::size_t kMaxFolderFiles = 20'000;
/// Folders inside folders are looked into so deep.
inline constexpr int kMaxFolderDepth = 8;

struct FolderListing {
  std::vector<std::string> documents;  ///< paths below the folder with `/`, in order of names
  LeftAside left_aside;
};

/// A file that a folder may be captured for: those without an ending are not, unlike in an archive,
/// since a folder of hers holds other things too.
bool is_folder_document(const std::string& path);

/// Links are not followed; hidden files are passed over. Throws Error when the folder cannot be
/// read or holds too much.
FolderListing list_folder(const std::string& folder);

/// The page that stands beside a folder of its parts (`dress.html` beside `dress_files`), as a
/// path; empty when `folder` is none.
std::string page_beside(const std::string& folder);

}  // namespace rangebook
