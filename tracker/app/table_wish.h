// What is said about the tables of a capture, by whom, and whether they have the columns it names.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include "schema/mapping_preview.h"
#include "schema/table_options.h"
#include "tracker/app/capture_report.h"
#include "tracker/app/request.h"
#include "tracker/store/book.h"

namespace rangebook {

struct TableWish {
  TableOptions said;             ///< for this capture alone; wins over the profile
  std::string profile;           ///< name of the shop's profile; empty: none
  TableOptions profile_options;  ///< what it says; used for the tables that have its columns
  bool by_name = false;          ///< the profile was asked for: it has to fit one table at least
};

/// With the profile that the request names, else the shop's default; or why there is none.
std::variant<TableWish, NotThere> wish_of(const Book& book, const std::string& shop,
                                          const MappingRequest& request);

/// Collects over all documents which of the named columns were seen in any.
class ColumnSearch {
 public:
  /// A table was read with these options; it has these columns, and lacks those.
  void saw(const TableOptions& options, const DocumentPreview& table);
  /// The first column that was said and no table had.
  std::optional<NotThere> missing(const TableOptions& said) const;

 private:
  std::set<std::string> found_;
  std::vector<std::string> names_;  ///< of columns of the last table
  std::string table_;
};

}  // namespace rangebook
