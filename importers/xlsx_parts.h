// The parts of a workbook that its sheets refer to: the list of sheets, number formats, shared
// strings (ECMA-376 part 1, SpreadsheetML).
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "importers/record_source.h"
#include "importers/xlsx_number.h"

namespace rangebook {

/// More text than this in the shared strings of one workbook is refused.
inline constexpr std::size_t kMaxSharedBytes = std::size_t{512} << 20U;

struct SheetEntry {
  std::string name;
  std::string path;  ///< in the archive
  bool hidden = false;
};

/// The shared strings in one buffer: a workbook of a million rows has a million of them.
class SharedStrings {
 public:
  std::size_t size() const { return ends_.size(); }
  std::string_view at(std::size_t index) const {
    const std::size_t from = index == 0 ? 0 : ends_[index - 1];
    return std::string_view(text_).substr(from, ends_[index] - from);
  }
  void append(std::string_view text) { text_ += text; }
  void end_string() { ends_.push_back(text_.size()); }
  std::size_t bytes() const { return text_.size(); }

 private:
  std::string text_;
  std::vector<std::size_t> ends_;
};

struct WorkbookParts {
  std::vector<SheetEntry> sheets;     ///< in the order of their tabs
  std::vector<NumberFormat> formats;  ///< by the style index of a cell
  SharedStrings strings;
  bool from_1904 = false;
  std::optional<DocumentFault> fault;  ///< why there is nothing else here
};

/// Reads the parts from the bytes of a workbook.
WorkbookParts read_workbook_parts(std::string_view bytes);

}  // namespace rangebook
