// Documents that were handed over and are not in the book yet. They lie in a folder beside it until
// they are kept or dropped, so that closing the browser, or the desk, loses nothing.
//
//   revisit.rangebook.held/4f1c.../1, 2, ..     the documents, by numbers of ours
//                                  policy.txt   a pasted text of terms
//                                  about        names of the documents, what was said of them
//
// Nothing a request says becomes a part of a path: an upload is found by comparing.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "schema/table_options.h"
#include "tracker/app/request.h"
#include "tracker/desk/desk_values.h"

namespace rangebook {

/// More are refused until one is kept or dropped.
inline constexpr std::size_t kMostHeld = 12;

/// What was said of an upload: fields of a form.
using UploadWords = std::vector<DeskField>;

struct HeldUpload {
  std::string id;  ///< random; names it in addresses
  std::vector<NamedFile> documents;
  std::string policy;    ///< path of a text of terms; may be empty
  UploadWords words;     ///< as typed, right or wrong
  TableOptions options;  ///< how its tables are to be read
};

class HeldUploads {
 public:
  explicit HeldUploads(std::string folder) : folder_(std::move(folder)) {}

  /// Writes the bytes of `documents`, each with its name, and what was said; a sentence where too
  /// many are held already. Throws Error when the disk does not take them.
  std::variant<HeldUpload, std::string> hold(const std::vector<DeskField>& documents,
                                             const std::string& policy,
                                             const UploadWords& words) const;
  std::optional<HeldUpload> find(const std::string& id) const;
  /// In the order of their first documents' names.
  std::vector<HeldUpload> all() const;
  /// What is said of it now.
  void say(const HeldUpload& upload) const;
  void drop(const HeldUpload& upload) const;

 private:
  std::vector<std::string> ids() const;
  std::optional<HeldUpload> read(const std::string& id) const;

  const std::string folder_;
};

/// For showing only: without `..`, drive or empty parts, at most 200 bytes from its end.
std::string shown_name(const std::string& said);

}  // namespace rangebook
