// Writes CSV by RFC 4180 that is safe to open in a spreadsheet.
#pragma once

#include <string>
#include <string_view>

namespace rangebook {

/// Rows of comma-separated cells, lines ended by CRLF, quoted where RFC 4180 asks for it. Broken
/// UTF-8 becomes U+FFFD.
class CsvWriter {
 public:
  /// Text of any origin. A cell that starts with `=`, `+`, `-`, `@`, tab, CR or LF gets an
  /// apostrophe in front, so that a spreadsheet shows it and does not run it (common practice, no
  /// standard). Programs that read the file back drop one apostrophe before such a sign.
  void text(std::string_view cell);
  /// A number or code of our own making, written as it is.
  void plain(std::string_view cell);
  void end_row();

  std::string take() { return std::move(out_); }

 private:
  std::string out_;
  bool first_ = true;
};

}  // namespace rangebook
