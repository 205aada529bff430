// The record scanner: one pass over the bytes, cells as views into the buffer.
#include "importers/csv_records.h"

#include <fmt/format.h>

#include <algorithm>

#include "importers/byte_scan.h"
#include "importers/csv_repair.h"

namespace rangebook {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

bool is_line_end(char sign) { return sign == '\n' || sign == '\r'; }

bool is_blank(char sign) { return sign == ' ' || sign == '\t'; }

}  // namespace

CsvRecords::CsvRecords(ByteSource& source) : source_(source) {
  while (buffer_.size() < kByteOrderMark.size() && refill()) continue;
  if (buffer_.starts_with(kByteOrderMark)) {
    start_ = kByteOrderMark.size();
    byte_ = start_;
  }
}

void CsvRecords::set_dialect(const CsvDialect& dialect) {
  dialect_ = dialect;
  delimiter_ = dialect.delimiter;
  quotes_ = dialect.quote.has_value();
  quote_ = dialect.quote.value_or('"');
  plain_ = !dialect.escape && !dialect.gaps;
}

std::string_view CsvRecords::peek(std::size_t bytes) {
  while (buffer_.size() - start_ < bytes && refill()) continue;
  return std::string_view(buffer_).substr(start_);
}

bool CsvRecords::next(Record& record) {
  record.after_gap = false;
  const std::uint64_t line = line_;
  if (!skip_empty_lines()) return false;
  record.after_gap = line_ != line;
  record.fault = RecordFault::none;
  while (scan_record(record) == Scan::need_more) {
    if (buffer_.size() - start_ > kMaxRecordBytes) {
      fail_over_long(record);
      return true;
    }
    refill();
  }
  return true;
}

/// False at the end of the document.
bool CsvRecords::skip_empty_lines() {
  while (true) {
    while (start_ < buffer_.size() && is_line_end(buffer_[start_])) {
      const std::size_t next = after_line_end(start_);
      if (next == buffer_.size() && !at_end_ && refill()) continue;
      advance(next, 1);
    }
    if (start_ < buffer_.size()) return true;
    if (!refill()) return false;
  }
}

CsvRecords::Scan CsvRecords::scan_record(Record& record) {
  record.cells.clear();
  record.line = line_;
  record.byte = byte_;
  escaped_.clear();
  newlines_ = 0;
  done_ = false;
  std::size_t at = start_;
  while (!done_) {
    const bool quoted = may_open_quote(at) && opens_quote(at);
    const Scan scan = quoted   ? scan_quoted_cell(record, at)
                      : plain_ ? scan_plain_cells(record, at)
                               : scan_cell(record, at);
    if (scan == Scan::need_more) return scan;
  }
  return Scan::complete;
}

/// A cheap look before opens_quote().
inline bool CsvRecords::may_open_quote(std::size_t at) const {
  return at != buffer_.size() && (buffer_[at] == quote_ || buffer_[at] == ' ');
}

/// Whether a quoted cell starts here, or after blanks; then `at` is its quote.
bool CsvRecords::opens_quote(std::size_t& at) const {
  if (!quotes_) return false;
  if (buffer_[at] == quote_) return true;
  if (delimiter_ == ' ') return false;
  const std::size_t past = past_blanks(at);
  if (past == buffer_.size() || buffer_[past] != quote_) return false;
  at = past;
  return true;
}

/// The inner loop: cells without quotes, escapes and gaps, up to the first cell that may have
/// quotes or to the end of the record.
CsvRecords::Scan CsvRecords::scan_plain_cells(Record& record, std::size_t& at) {
  const char* const data = buffer_.data();
  const char* const end = data + buffer_.size();
  const char* from = data + at;
  while (true) {
    const char* const stop = find_any_of(from, end, delimiter_, '\n', '\r');
    if (stop == end && !at_end_) return Scan::need_more;
    record.cells.emplace_back(from, static_cast<std::size_t>(stop - from));
    at = static_cast<std::size_t>(stop - data);
    if (stop == end || *stop != delimiter_ || record.cells.size() > kMaxCells) {
      return after_cell(record, at);
    }
    ++at;
    if (may_open_quote(at)) return Scan::complete;
    from = stop + 1;
  }
}

CsvRecords::Scan CsvRecords::scan_cell(Record& record, std::size_t& at) {
  const char* const data = buffer_.data();
  const char* const end = data + buffer_.size();
  const char* const from = data + at;
  const char* stop = find_any_of(from, end, delimiter_, '\n', '\r');
  while (stop != end && goes_on(from, stop)) {
    stop = find_any_of(stop + 1, end, delimiter_, '\n', '\r');
  }
  if (dialect_.escape && std::find(from, stop, *dialect_.escape) != stop) {
    escaped_.push_back(record.cells.size());
  }
  if (stop == end && !at_end_) return Scan::need_more;
  at = static_cast<std::size_t>(stop - data);
  record.cells.emplace_back(from, static_cast<std::size_t>(stop - from));
  return after_cell(record, at);
}

/// Whether the sign at `stop` belongs to the cell: it is escaped, or a single space among gaps.
bool CsvRecords::goes_on(const char* from, const char* stop) const {
  if (*stop != delimiter_) return false;
  if (dialect_.gaps) {
    const char* const end = buffer_.data() + buffer_.size();
    return stop == from || (stop + 1 != end && stop[1] != ' ' && stop[-1] != ' ');
  }
  std::size_t escapes = 0;
  while (stop - escapes != from && *(stop - escapes - 1) == dialect_.escape) ++escapes;
  return escapes % 2 == 1;
}

CsvRecords::Scan CsvRecords::scan_quoted_cell(Record& record, std::size_t& at) {
  const char* const data = buffer_.data();
  const char* const end = data + buffer_.size();
  const char* stop = data + at + 1;
  const char third = dialect_.escape.value_or('\n');
  bool escaped = false;
  while (true) {
    stop = find_any_of(stop, end, quote_, '\n', third);
    if (stop == end) {
      if (!at_end_) return Scan::need_more;
      fail(record, RecordFault::unclosed_quote);
      return Scan::complete;
    }
    if (*stop == '\n') {
      ++newlines_;
    } else if (stop + 1 == end && !at_end_) {
      return Scan::need_more;
    } else if (stop + 1 != end && (*stop != quote_ || stop[1] == quote_)) {
      escaped = true;
      newlines_ += stop[1] == '\n' ? 1U : 0U;
      ++stop;
    } else {
      break;
    }
    ++stop;
  }
  const std::size_t from = at + 1;
  at = static_cast<std::size_t>(stop - data) + 1;
  if (escaped) escaped_.push_back(record.cells.size());
  record.cells.emplace_back(data + from, at - 1 - from);
  if (at < buffer_.size() && is_blank(buffer_[at]) && buffer_[at] != delimiter_) {
    at = past_blanks(at);
  }
  return after_cell(record, at);
}

/// Looks at what ends a cell: a delimiter, the end of the line or of the document.
CsvRecords::Scan CsvRecords::after_cell(Record& record, std::size_t& at) {
  if (record.cells.size() > kMaxCells) {
    fail(record, RecordFault::too_many_cells);
  } else if (at == buffer_.size()) {
    if (!at_end_) return Scan::need_more;
    finish(record, at, at);
  } else if (buffer_[at] == delimiter_) {
    ++at;
    while (dialect_.gaps && at < buffer_.size() && buffer_[at] == ' ') ++at;
    if (dialect_.gaps && at == buffer_.size() && !at_end_) return Scan::need_more;
  } else if (is_line_end(buffer_[at])) {
    if (at + 1 == buffer_.size() && buffer_[at] == '\r' && !at_end_) return Scan::need_more;
    finish(record, at, after_line_end(at));
  } else {
    fail(record, RecordFault::text_after_quote);
  }
  return Scan::complete;
}

void CsvRecords::finish(Record& record, std::size_t end, std::size_t next) {
  record.text = std::string_view(buffer_).substr(start_, end - start_);
  record.ended = next > end;
  if (!escaped_.empty()) unescape(record);
  done_ = true;
  advance(next, newlines_ + (record.ended ? 1 : 0));
}

/// Gives up the line on which the record starts; reading goes on with the next line. A quote that
/// is never closed was looked for up to the limit once: any later quote would have closed it, so
/// the lines between are read twice at most.
void CsvRecords::fail(Record& record, RecordFault fault) {
  if (!complete_line()) return skip_line(record, fault);
  const std::size_t end = line_end(start_);
  record.cells.clear();
  record.text = std::string_view(buffer_).substr(start_, end - start_);
  record.fault = fault;
  record.ended = end < buffer_.size();
  done_ = true;
  advance(after_line_end(end), record.ended ? 1 : 0);
}

/// Has the whole first line of the record in the buffer, and what follows its end; false when the
/// line is over the limit.
bool CsvRecords::complete_line() {
  while (line_end(start_) + 1 >= buffer_.size()) {
    if (buffer_.size() - start_ > kMaxRecordBytes) return line_end(start_) < buffer_.size();
    if (!refill()) return true;
  }
  return true;
}

/// A record over the limit: an unclosed quote when its first line is short, else a line that is
/// itself too long.
void CsvRecords::fail_over_long(Record& record) {
  if (line_end(start_) < buffer_.size()) return fail(record, RecordFault::unclosed_quote);
  skip_line(record, RecordFault::too_long);
}

/// Reads over a line without holding it.
void CsvRecords::skip_line(Record& record, RecordFault fault) {
  record.cells.clear();
  record.fault = fault;
  const std::string head = buffer_.substr(start_, kExcerptBytes);
  while (line_end(start_) == buffer_.size()) {
    advance(buffer_.size(), 0);
    if (!refill()) break;
  }
  record.ended = start_ < buffer_.size();
  if (record.ended) advance(after_line_end(line_end(start_)), 1);
  buffer_.insert(0, head);  // before start_, where the next refill drops it
  start_ += head.size();
  record.text = std::string_view(buffer_).substr(0, head.size());
  done_ = true;
}

void CsvRecords::advance(std::size_t next, std::uint64_t lines) {
  byte_ += next - start_;
  start_ = next;
  line_ += lines;
}

/// Appends the next chunk, after dropping what has been read; false at the end of the document.
bool CsvRecords::refill() {
  if (at_end_) return false;
  buffer_.erase(0, start_);
  start_ = 0;
  const std::string_view chunk = source_.next_chunk();
  at_end_ = chunk.empty();
  buffer_.append(chunk);
  return !at_end_;
}

std::size_t CsvRecords::line_end(std::size_t at) const {
  const char* const data = buffer_.data();
  const char* const end = data + buffer_.size();
  return static_cast<std::size_t>(find_any_of(data + at, end, '\n', '\r', '\n') - data);
}

std::size_t CsvRecords::after_line_end(std::size_t at) const {
  if (at == buffer_.size()) return at;
  const bool pair = buffer_[at] == '\r' && at + 1 < buffer_.size() && buffer_[at + 1] == '\n';
  return at + (pair ? 2 : 1);
}

std::size_t CsvRecords::past_blanks(std::size_t at) const {
  while (at < buffer_.size() && is_blank(buffer_[at]) && buffer_[at] != delimiter_) ++at;
  return at;
}

/// Into strings of our own, so that `text` stays as it stands in the document.
void CsvRecords::unescape(Record& record) {
  if (own_cells_.size() < escaped_.size()) own_cells_.resize(escaped_.size());
  for (std::size_t i = 0; i < escaped_.size(); ++i) {
    auto& cell = record.cells[escaped_[i]];
    unescape_cell(cell, dialect_, own_cells_[i]);
    cell = own_cells_[i];
  }
}

bool CsvRecords::repair(Record& record, std::size_t columns) {
  const bool hopeless = record.fault == RecordFault::unclosed_quote ||
                        record.fault == RecordFault::too_long || !record.ended;
  if (hopeless || columns < 2) return false;
  auto cells = split_otherwise(record.text, dialect_, columns);
  if (!cells) return false;
  own_cells_ = std::move(*cells);
  record.cells.assign(own_cells_.begin(), own_cells_.end());
  record.fault = RecordFault::none;
  return true;
}

void CsvRecords::split_roughly(Record& record) {
  record.cells.clear();
  for (std::string_view rest = record.text; !rest.empty();) {
    const std::size_t at = std::min(rest.find(delimiter_), rest.size());
    record.cells.push_back(without_quotes(rest.substr(0, at), dialect_));
    rest.remove_prefix(std::min(at + 1, rest.size()));
  }
}

std::string CsvRecords::extra_cells_remedy() const {
  return fmt::format(
      "Put quotes around cells that contain a {}, for instance prices such as \"79,90\".",
      delimiter_name(dialect_));
}

}  // namespace rangebook
