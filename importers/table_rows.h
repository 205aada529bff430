// The body of a table: the header found, and what is no row left out: titles above, notes and
// totals below, empty rows, the header again.
#pragma once

#include <cstdint>
#include <deque>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "importers/field_map.h"
#include "importers/record_source.h"
#include "importers/table_header.h"
#include "schema/table_options.h"

namespace rangebook {

/// So many records at the front are looked at for the header.
inline constexpr std::size_t kHeaderSearchRecords = 64;

class TableRows {
 public:
  TableRows(std::unique_ptr<RecordSource> source, const TableOptions& options);

  /// Finds the header; before next(). False when the document has no record at all.
  bool open();
  /// The next record of the body; false at the end. A record with a fault is one that no reading
  /// could mend.
  bool next(Record& record);

  /// Names of the columns; empty when the table has no header.
  const std::vector<std::string>& names() const { return names_; }
  const FieldMap& map() const { return map_; }
  std::size_t columns() const { return columns_; }
  /// The columns of a table without known names, as their content tells them.
  void set_map(FieldMap map);
  /// The first records of the body that open() has already read.
  const std::deque<KeptRecord>& ahead() const { return ahead_; }
  /// The last record broke the rules and was read another way.
  bool repaired() const { return repaired_; }
  RecordSource& source() { return *source_; }
  const RecordSource& source() const { return *source_; }
  /// What was left out, for the record: `header=line 4; left out: 2 notes (lines 90, 91)`.
  std::string description() const;
  /// The same, one by one.
  std::vector<Detection> detections() const;
  std::uint64_t further_tables() const { return further_tables_; }

 private:
  void read_ahead();
  void use_header(std::vector<std::string> names);
  bool take(Record& record);
  bool is_usual(const Record& record) const;
  bool is_left_out(Record& record);
  bool is_header_again(const Record& record) const;
  bool starts_another_table(const Record& record);
  bool is_note(const Record& record) const;
  void mend(Record& record);

  std::unique_ptr<RecordSource> source_;
  TableOptions options_;
  std::vector<std::string> names_;
  FieldMap map_;
  std::size_t columns_ = 0;
  std::size_t key_column_ = 0;  ///< of the name, else the first
  std::size_t key_bytes_ = 0;   ///< length of its header
  std::deque<KeptRecord> ahead_;
  std::optional<KeptRecord> replayed_;
  bool repaired_ = false;
  std::uint64_t header_line_ = 0;
  std::size_t header_rows_ = 0;
  std::size_t preamble_ = 0;  ///< records before the header or the body
  std::uint64_t notes_ = 0;
  std::uint64_t repeated_ = 0;
  std::uint64_t further_tables_ = 0;
  std::vector<std::uint64_t> note_lines_;  ///< the first few
};

/// Whether a cell begins a line of totals (schema/tables/table_words.tsv).
bool is_total_word(std::string_view cell);

}  // namespace rangebook
