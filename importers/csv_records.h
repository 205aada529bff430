// Splitting a CSV document into records (RFC 4180), chunk by chunk: memory is bounded by one
// record, not by the document.
//
// Abuses that are taken as they are meant: LF or CRLF or CR line ends, a quote inside an unquoted
// cell, a missing line end at the end of the document. A quote that is never closed costs its own
// line only: reading goes on with the next line. Rejected alternative: closing it at the end of
// the document, which swallows every later row into one cell.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "importers/row_reader.h"

namespace rangebook {

/// A longer record is refused: no row of a range needs it, and an unclosed quote must not make us
/// hold a whole document.
inline constexpr std::size_t kMaxRecordBytes = std::size_t{8} << 20U;
/// More cells than this in one record are refused.
inline constexpr std::size_t kMaxCells = 4096;
enum class RecordFault : std::uint8_t {
  none,
  unclosed_quote,    ///< the record is the line on which the quote opens
  text_after_quote,  ///< `"abc"def`
  too_long,          ///< over kMaxRecordBytes
  too_many_cells,
};

/// One record. Views are valid until the next call of CsvRecords::next.
struct CsvRecord {
  std::vector<std::string_view> cells;  ///< unquoted; empty when `fault` is set
  std::string_view text;                ///< the record as it stands, cut for over-long ones
  std::uint64_t line = 1;               ///< line of its first byte, from 1
  std::uint64_t byte = 0;               ///< offset of its first byte, from 0
  RecordFault fault = RecordFault::none;
  bool ended = true;  ///< false when the document ends within the record's last line
};

class CsvRecords {
 public:
  /// Reads from `source`, which must outlive this. A UTF-8 byte order mark is left out.
  explicit CsvRecords(ByteSource& source);

  /// Text up to the first line end, without consuming it: for detecting the delimiter.
  std::string_view peek_line();
  void set_delimiter(char delimiter) { delimiter_ = delimiter; }

  /// The next record that is not an empty line; false at the end.
  bool next(CsvRecord& record);

 private:
  enum class Scan : std::uint8_t { complete, need_more };

  Scan scan_record(CsvRecord& record);
  Scan scan_cell(CsvRecord& record, std::size_t& at);
  Scan scan_quoted_cell(CsvRecord& record, std::size_t& at);
  Scan after_cell(CsvRecord& record, std::size_t& at);
  void add_cell(CsvRecord& record, std::size_t from, std::size_t to);
  void finish(CsvRecord& record, std::size_t end, std::size_t next);
  void fail(CsvRecord& record, RecordFault fault);
  void fail_over_long(CsvRecord& record);
  bool complete_line();
  void skip_line(CsvRecord& record, RecordFault fault);
  void advance(std::size_t next, std::uint64_t lines);
  bool refill();
  std::size_t line_end(std::size_t at) const;
  std::size_t after_line_end(std::size_t at) const;
  void unescape(CsvRecord& record);

  ByteSource& source_;
  char delimiter_ = ',';
  std::string buffer_;
  std::size_t start_ = 0;             ///< of the current record, in buffer_
  std::uint64_t byte_ = 0;            ///< offset of start_ in the document
  std::uint64_t line_ = 1;            ///< line of start_
  std::uint64_t newlines_ = 0;        ///< line ends inside the current record's quotes
  bool at_end_ = false;               ///< the source has nothing more
  bool done_ = false;                 ///< the current record is complete
  std::vector<std::size_t> doubled_;  ///< indices of cells with doubled quotes
};

}  // namespace rangebook
