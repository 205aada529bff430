// Whether a table has the columns that options speak of: what a profile has to prove before it is
// used unasked.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "importers/row_reader.h"
#include "schema/table_options.h"

namespace rangebook {

/// Whether a table read with `options` has all `columns`, and one with names. `front` is the
/// beginning of the document, enough to hold its header.
bool table_fits(std::string_view front, const TableOptions& options,
                const std::vector<ColumnChoice>& columns);
/// Of a workbook, whole; its sheet has to be there too.
bool workbook_fits(const std::string& bytes, const TableOptions& options,
                   const std::vector<ColumnChoice>& columns);

/// Of a JSON or XML feed, by the products in its front: each of `columns` is a name in one of them.
bool json_fits(std::string_view front, const TableOptions& options,
               const std::vector<ColumnChoice>& columns);
bool xml_fits(std::string_view front, const TableOptions& options,
              const std::vector<ColumnChoice>& columns);

/// A document whose front is looked at before it is read.
class FrontSource final : public ByteSource {
 public:
  /// `source` must outlive this.
  explicit FrontSource(ByteSource& source) : source_(source) {}

  /// The beginning of the document, kFrontBytes or all of it; before the first next_chunk().
  std::string_view front();
  std::string_view next_chunk() override;

 private:
  ByteSource& source_;
  std::string front_;
  bool looked_ = false;
  bool given_ = false;
};
inline constexpr std::size_t kFrontBytes = std::size_t{256} << 10U;

}  // namespace rangebook
