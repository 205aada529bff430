// All names first: only then is it known which folders hold the parts of a page.
#include "tracker/app/folder_listing.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "importers/container.h"
#include "schema/error.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;

/// Every file below a folder that is not hidden.
std::vector<std::string> files_below(const fs::path& folder) {
  std::vector<std::string> files;
  std::error_code error;
  fs::recursive_directory_iterator at(folder, error);
  for (; !error && at != fs::recursive_directory_iterator(); at.increment(error)) {
    const std::string path = at->path().lexically_relative(folder).generic_string();
    const bool is_link = at->is_symlink(error);
    const bool is_folder = !error && !is_link && at->is_directory(error);
    const bool is_file = !error && !is_link && at->is_regular_file(error);
    if (error) break;
    const bool leftover = is_leftover(path);
    if (is_folder && (leftover || at.depth() + 1 >= kMaxFolderDepth)) {
      at.disable_recursion_pending();
    }
    if (is_file && !leftover) files.push_back(path);
  }
  if (error) throw Error(fmt::format("Cannot read {}: {}.", folder.string(), error.message()));
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace

bool is_folder_document(const std::string& path) {
  const std::string ending = fs::path(path).extension().string();
  return !ending.empty() &&
         (ending == ".zip" || has_document_name(fs::path(path).filename().string()));
}

FolderListing list_folder(const std::string& folder) {
  const auto files = files_below(folder);
  SavedPages pages;
  for (const auto& file : files) pages.add(file);
  FolderListing listing;
  for (const auto& file : files) {
    if (const auto page = pages.page_of(file)) {
      ++listing.left_aside.parts;
      listing.left_aside.pages.insert(*page);
    } else if (is_folder_document(file)) {
      listing.documents.push_back(file);
    } else {
      ++listing.left_aside.others;
    }
  }
  if (listing.documents.size() > kMaxFolderFiles) {
    throw Error(fmt::format(
        "The folder {} holds more than {} documents. Give the folders or files that matter.",
        folder, kMaxFolderFiles));
  }
  return listing;
}

std::string page_beside(const std::string& folder) {
  const fs::path path = fs::path(folder).lexically_normal();
  const std::string name = (path.has_filename() ? path : path.parent_path()).filename().string();
  const fs::path around = (path.has_filename() ? path : path.parent_path()).parent_path();
  const auto page = page_of_parts_folder(name);
  if (!page) return {};
  for (const std::string_view ending : {".html", ".htm", ".xhtml", ".xht"}) {
    const fs::path candidate = around / (std::string(*page) + std::string(ending));
    std::error_code error;
    if (fs::is_regular_file(candidate, error)) return candidate.string();
  }
  return {};
}

}  // namespace rangebook
