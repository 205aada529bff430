// Which names a feed has, where they stand in its products, and what they were read as.
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "importers/feed_choices.h"
#include "schema/mapping_preview.h"
#include "schema/raw_row.h"

namespace rangebook {

/// What stands at one way into a product: `variants.price`.
struct FeedColumn {
  std::string path;
  std::set<Field> fields;  ///< empty: not read
  bool chosen = false;     ///< the user has spoken of it
  std::vector<ColumnExample> examples;
};
/// More are not told apart.
inline constexpr std::size_t kMaxFeedColumns = 200;

/// Which names of a feed were read as which field, and which were not read.
struct FeedNames {
  FeedChoices choices;         ///< what is said of them; these win
  bool keep_columns = false;   ///< columns are to be filled in
  bool keep_examples = false;  ///< and their examples
  std::map<Field, std::set<std::string>> read;
  std::set<std::string> unknown;
  std::vector<FeedColumn> columns;  ///< in the order they were met
  std::set<std::string> found;      ///< choices whose name was met

  /// Keeps a value that stands at `path`, and what it was read as, where columns are kept.
  void note(const std::string& path, const std::string& name, std::string_view text,
            std::vector<FieldText> fields);
  /// The choices whose name was never met.
  std::vector<std::string> missing() const;

 private:
  std::unordered_map<std::string, std::size_t> by_path_;  ///< in `columns`
};
/// `name=title price=g:price; not used: shipping`.
std::string to_string(const FeedNames& names);
/// The same for a preview: the columns, else each field with the names it is read from and the
/// names not used.
std::vector<ColumnPreview> columns_of(const FeedNames& names);

}  // namespace rangebook
