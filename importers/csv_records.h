// Splitting a CSV document into records (RFC 4180), chunk by chunk: memory is bounded by one
// record, not by the document.
//
// Abuses that are taken as they are meant: LF or CRLF or CR line ends, a quote inside an unquoted
// cell, spaces around a quoted cell, a missing line end at the end of the document. A quote that is
// never closed costs its own line only: reading goes on with the next line. Rejected alternative:
// closing it at the end of the document, which swallows every later row into one cell.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "importers/csv_dialect.h"
#include "importers/record_source.h"
#include "importers/row_reader.h"

namespace rangebook {

/// A longer record is refused: no row of a range needs it, and an unclosed quote must not make us
/// hold a whole document.
inline constexpr std::size_t kMaxRecordBytes = std::size_t{8} << 20U;

class CsvRecords : public RecordSource {
 public:
  /// Reads from `source`, which must outlive this. A UTF-8 byte order mark is left out.
  explicit CsvRecords(ByteSource& source);

  /// At least `bytes` of the document's front, or all of it, without consuming it. Only before the
  /// first next(): for detecting the dialect.
  std::string_view peek(std::size_t bytes);
  bool at_end() const { return at_end_; }
  void set_dialect(const CsvDialect& dialect);
  const CsvDialect& dialect() const { return dialect_; }

  bool next(Record& record) override;
  bool repair(Record& record, std::size_t columns) final;
  void split_roughly(Record& record) final;
  bool may_hold_bad_bytes() const final { return !source_.all_text(); }
  std::string description() const override { return to_string(dialect_); }
  std::string extra_cells_remedy() const final;

 private:
  enum class Scan : std::uint8_t { complete, need_more };

  bool skip_empty_lines();
  Scan scan_record(Record& record);
  Scan scan_plain_cells(Record& record, std::size_t& at);
  Scan scan_cell(Record& record, std::size_t& at);
  Scan scan_quoted_cell(Record& record, std::size_t& at);
  Scan after_cell(Record& record, std::size_t& at);
  bool may_open_quote(std::size_t at) const;
  bool opens_quote(std::size_t& at) const;
  bool goes_on(const char* from, const char* stop) const;
  void finish(Record& record, std::size_t end, std::size_t next);
  void fail(Record& record, RecordFault fault);
  void fail_over_long(Record& record);
  bool complete_line();
  void skip_line(Record& record, RecordFault fault);
  void advance(std::size_t next, std::uint64_t lines);
  bool refill();
  std::size_t past_blanks(std::size_t at) const;
  std::size_t line_end(std::size_t at) const;
  std::size_t after_line_end(std::size_t at) const;
  void unescape(Record& record);

  ByteSource& source_;
  CsvDialect dialect_;
  char delimiter_ = ',';  ///< of dialect_, for the inner loop
  char quote_ = '"';
  bool quotes_ = true;
  bool plain_ = true;  ///< neither escapes nor gaps
  std::string buffer_;
  std::size_t start_ = 0;               ///< of the current record, in buffer_
  std::uint64_t byte_ = 0;              ///< offset of start_ in the document
  std::uint64_t line_ = 1;              ///< line of start_
  std::uint64_t newlines_ = 0;          ///< line ends inside the current record's quotes
  bool at_end_ = false;                 ///< the source has nothing more
  bool done_ = false;                   ///< the current record is complete
  std::vector<std::size_t> escaped_;    ///< indices of cells with escapes or doubled quotes
  std::vector<std::string> own_cells_;  ///< what is not in the buffer as it should read
};

}  // namespace rangebook
