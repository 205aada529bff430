// Puts right the slips that pages make in JSON: what a browser's script would have forgiven, and
// nothing that changes what the block says.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace rangebook {

/// The repaired text, and the way from its offsets back to those of the text it came from.
class RepairedJson {
 public:
  /// Repairs: commas without a value behind them; control characters, line breaks and impossible
  /// escapes inside strings; bytes that are not UTF-8 (U+FFFD); comments; the wrappers
  /// "<!-- -->" and "<![CDATA[ ]]>"; ";" behind the value; a byte order mark and no-break spaces;
  /// a block whose every quote was written `&quot;`. Whatever else is wrong stays wrong.
  explicit RepairedJson(std::string_view text);

  const std::string& text() const { return text_; }
  /// Where the byte at `offset` of text() came from.
  std::size_t source_offset(std::size_t offset) const;
  /// How many bytes were not UTF-8.
  std::size_t bad_bytes() const { return bad_bytes_; }

 private:
  struct Edit {
    std::size_t offset;  ///< from here on in the repaired text ..
    std::size_t source;  ///< .. the bytes came from here on
  };

  void outside_string();
  void inside_string();
  void escape();
  void copy(std::size_t bytes);
  void drop(std::size_t bytes);
  void replace(std::size_t bytes, std::string_view by);
  void copy_utf8();
  bool skip_wrapper();
  bool skip_comment();
  bool take_quote();
  void drop_comma();
  bool at(std::string_view what) const { return source_.substr(pos_).starts_with(what); }

  std::string_view source_;
  std::size_t pos_ = 0;
  bool in_string_ = false;
  bool escaped_quotes_ = false;
  std::size_t bad_bytes_ = 0;
  std::string text_;
  std::vector<Edit> edits_;
};

}  // namespace rangebook
