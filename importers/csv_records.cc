// The record scanner: one pass over the bytes, cells as views into the buffer.
#include "importers/csv_records.h"

#include <algorithm>

#include "importers/byte_scan.h"

namespace rangebook {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

bool is_line_end(char sign) { return sign == '\n' || sign == '\r'; }

/// Removes one quote of each doubled pair, in place; returns the new length.
std::size_t undouble_quotes(char* text, std::size_t length) {
  std::size_t out = 0;
  for (std::size_t in = 0; in < length; ++in) {
    text[out++] = text[in];
    if (text[in] == '"') ++in;
  }
  return out;
}

}  // namespace

CsvRecords::CsvRecords(ByteSource& source) : source_(source) {
  while (buffer_.size() < kByteOrderMark.size() && refill()) continue;
  if (buffer_.starts_with(kByteOrderMark)) {
    start_ = kByteOrderMark.size();
    byte_ = start_;
  }
}

std::string_view CsvRecords::peek_line() {
  std::size_t end = line_end(start_);
  while (end == buffer_.size() && buffer_.size() - start_ < kMaxRecordBytes && refill()) {
    end = line_end(start_);
  }
  return std::string_view(buffer_).substr(start_, end - start_);
}

bool CsvRecords::next(CsvRecord& record) {
  while (true) {
    while (start_ < buffer_.size() && is_line_end(buffer_[start_])) {
      const std::size_t next = after_line_end(start_);
      if (next == buffer_.size() && !at_end_ && refill()) continue;
      advance(next, 1);
    }
    if (start_ < buffer_.size()) break;
    if (!refill()) return false;
  }
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

CsvRecords::Scan CsvRecords::scan_record(CsvRecord& record) {
  record.cells.clear();
  record.line = line_;
  record.byte = byte_;
  doubled_.clear();
  newlines_ = 0;
  done_ = false;
  std::size_t at = start_;
  while (!done_) {
    const bool quoted = at < buffer_.size() && buffer_[at] == '"';
    const Scan scan = quoted ? scan_quoted_cell(record, at) : scan_cell(record, at);
    if (scan == Scan::need_more) return scan;
  }
  return Scan::complete;
}

CsvRecords::Scan CsvRecords::scan_cell(CsvRecord& record, std::size_t& at) {
  const char* const data = buffer_.data();
  const char* const end = data + buffer_.size();
  const char* const stop = find_any_of(data + at, end, delimiter_, '\n', '\r');
  if (stop == end && !at_end_) return Scan::need_more;
  const std::size_t from = at;
  at = static_cast<std::size_t>(stop - data);
  add_cell(record, from, at);
  return after_cell(record, at);
}

CsvRecords::Scan CsvRecords::scan_quoted_cell(CsvRecord& record, std::size_t& at) {
  const char* const data = buffer_.data();
  const char* const end = data + buffer_.size();
  const char* stop = data + at + 1;
  bool doubled = false;
  while (true) {
    stop = find_any_of(stop, end, '"', '\n', '\n');
    if (stop == end) {
      if (!at_end_) return Scan::need_more;
      fail(record, RecordFault::unclosed_quote);
      return Scan::complete;
    }
    if (*stop == '\n') {
      ++newlines_;
    } else if (stop + 1 == end && !at_end_) {
      return Scan::need_more;
    } else if (stop + 1 != end && stop[1] == '"') {
      doubled = true;
      ++stop;
    } else {
      break;
    }
    ++stop;
  }
  const std::size_t from = at + 1;
  at = static_cast<std::size_t>(stop - data) + 1;
  if (doubled) doubled_.push_back(record.cells.size());
  add_cell(record, from, at - 1);
  return after_cell(record, at);
}

/// Looks at what ends a cell: a delimiter, the end of the line or of the document.
CsvRecords::Scan CsvRecords::after_cell(CsvRecord& record, std::size_t& at) {
  if (record.cells.size() > kMaxCells) {
    fail(record, RecordFault::too_many_cells);
  } else if (at == buffer_.size()) {
    if (!at_end_) return Scan::need_more;
    finish(record, at, at);
  } else if (buffer_[at] == delimiter_) {
    ++at;
  } else if (is_line_end(buffer_[at])) {
    if (at + 1 == buffer_.size() && buffer_[at] == '\r' && !at_end_) return Scan::need_more;
    finish(record, at, after_line_end(at));
  } else {
    fail(record, RecordFault::text_after_quote);
  }
  return Scan::complete;
}

void CsvRecords::add_cell(CsvRecord& record, std::size_t from, std::size_t to) {
  record.cells.emplace_back(buffer_.data() + from, to - from);
}

void CsvRecords::finish(CsvRecord& record, std::size_t end, std::size_t next) {
  record.text = std::string_view(buffer_).substr(start_, end - start_);
  record.ended = next > end;
  if (!doubled_.empty()) unescape(record);
  done_ = true;
  advance(next, newlines_ + (record.ended ? 1 : 0));
}

/// Gives up the line on which the record starts; reading goes on with the next line. A quote that
/// is never closed was looked for up to the limit once: any later quote would have closed it, so
/// the lines between are read twice at most.
void CsvRecords::fail(CsvRecord& record, RecordFault fault) {
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
void CsvRecords::fail_over_long(CsvRecord& record) {
  if (line_end(start_) < buffer_.size()) return fail(record, RecordFault::unclosed_quote);
  skip_line(record, RecordFault::too_long);
}

/// Reads over a line without holding it.
void CsvRecords::skip_line(CsvRecord& record, RecordFault fault) {
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

void CsvRecords::unescape(CsvRecord& record) {
  for (const std::size_t index : doubled_) {
    auto& cell = record.cells[index];
    char* const text = buffer_.data() + (cell.data() - buffer_.data());
    cell = cell.substr(0, undouble_quotes(text, cell.size()));
  }
}

}  // namespace rangebook
