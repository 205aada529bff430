// Where the rows of a table come from: CSV lines, the rows of a sheet. What a table means is read
// in one place for all of them (importers/table_reader.h).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "schema/mapping_preview.h"
#include "schema/rejection.h"

namespace rangebook {

/// More cells than this in one record are refused.
inline constexpr std::size_t kMaxCells = 4096;

enum class RecordFault : std::uint8_t {
  none,
  unclosed_quote,    ///< the record is the line on which the quote opens
  text_after_quote,  ///< `"abc"def`
  too_long,          ///< over kMaxRecordBytes
  too_many_cells,
};

/// One record. Views are valid until the next call of RecordSource::next.
struct Record {
  std::vector<std::string_view> cells;  ///< unquoted; empty when `fault` is set
  std::string_view text;                ///< the record as it stands, cut for over-long ones
  std::uint64_t line = 1;               ///< line or row of its first byte, from 1
  std::uint64_t byte = 0;               ///< offset of its first byte, from 0; 0 where none is known
  RecordFault fault = RecordFault::none;
  bool ended = true;       ///< false when the document ends within the record's last line
  bool after_gap = false;  ///< an empty line stands before it
};

/// Why a document as a whole cannot be read, or not to its end.
struct DocumentFault {
  RejectionKind kind = RejectionKind::unreadable_document;
  std::string what;
  std::string how_to_fix;
};

class RecordSource {
 public:
  RecordSource() = default;
  RecordSource(const RecordSource&) = delete;
  RecordSource& operator=(const RecordSource&) = delete;
  virtual ~RecordSource() = default;

  /// The next record that is not empty; false at the end.
  virtual bool next(Record& record) = 0;
  /// After next() gave false: why there is nothing, or nothing more.
  virtual std::optional<DocumentFault> fault() const { return std::nullopt; }
  /// Splits a record with a fault, or with another number of cells than `columns`, in another way.
  /// True when it then has exactly that many; its views are valid until the next call of next().
  virtual bool repair(Record& /*record*/, std::size_t /*columns*/) { return false; }
  /// Splits a record that cannot be split by the rules, for naming the line it speaks of.
  virtual void split_roughly(Record& /*record*/) {}
  /// False while every byte read so far is known to be good text.
  virtual bool may_hold_bad_bytes() const { return true; }
  /// How the document was understood: `delimiter=comma`. Empty where there is nothing to tell.
  virtual std::string description() const { return {}; }
  /// The same, one by one.
  virtual std::vector<Detection> detections() const { return {}; }
  /// What to do about a row with more cells than the header.
  virtual std::string extra_cells_remedy() const = 0;
};

}  // namespace rangebook
