// What a browser leaves behind when it saves a page with its parts ("Web page, complete"): the
// folder beside the page, addresses that lead into that folder, the comment with the page's
// address.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>

namespace rangebook {

/// The page a folder of parts belongs to, without its ending: `dress` for `dress_files`, in the
/// languages of browsers. Nothing when the folder has no such name. A folder is one of parts only
/// where that page stands beside it.
std::optional<std::string_view> page_of_parts_folder(std::string_view folder);

/// Tells which files of a folder or an archive are parts of saved pages.
class SavedPages {
 public:
  /// Every file of the listing has to be added before the first question; with `/`.
  void add(std::string_view path);
  /// The page whose parts the file is among, without its ending.
  std::optional<std::string> page_of(std::string_view path) const;

 private:
  std::unordered_set<std::string> pages_;
};

/// What was not taken from a folder or an archive, for telling.
struct LeftAside {
  std::uint64_t parts = 0;  ///< parts of saved pages: pictures, scripts, styles, frames
  std::unordered_set<std::string> pages;  ///< whose parts they are
  std::uint64_t others = 0;               ///< no documents, by their names or first bytes

  bool empty() const { return parts == 0 && others == 0; }
  /// `3 parts of 1 saved page (pictures, scripts, frames) and 2 files that are no documents`
  std::string sentence() const;
};

/// The address in `<!-- saved from url=(0042)https://.. -->` near the beginning of a page.
std::optional<std::string> saved_from(std::string_view page);

/// True for a reference that leads to a copy on the disk (`./dress_files/front.jpg`, `file:..`) or
/// within the document (`cid:`, `data:`, `blob:`), not to the shop.
bool is_saved_copy(std::string_view reference);

/// The reference to a picture made absolute; of a copy on the disk only the name of the picture,
/// of one within the document nothing.
std::string picture_address(std::string_view reference, std::string_view base);

/// The reference to a page made absolute; empty for a copy.
std::string link_address(std::string_view reference, std::string_view base);

/// True for `http:` and `https:`.
bool is_web_address(std::string_view address);

}  // namespace rangebook
