// A streaming JSON writer: keys in the order they are written, no tree in memory. A comparison of
// two large captures has tens of thousands of changes, and a document tree would cost more than
// the comparison itself.
#pragma once

#include <concepts>
#include <cstddef>
#include <string>
#include <string_view>

namespace rangebook {

/// Writes one JSON text (RFC 8259). The caller keeps begin and end balanced and gives a key before
/// each value of an object; commas, escapes and UTF-8 are the writer's business. Bytes that are
/// not UTF-8 become U+FFFD, so the output is always valid.
class JsonWriter {
 public:
  /// `reserve`: expected size of the output in bytes.
  explicit JsonWriter(std::size_t reserve = 0) { out_.reserve(reserve); }

  void begin_object() { open('{'); }
  void end_object() { close('}'); }
  void begin_array() { open('['); }
  void end_array() { close(']'); }

  void key(std::string_view name);
  void value(std::string_view text);
  void value(const char* text) { value(std::string_view(text)); }
  void value(bool truth);
  template <std::integral Number>
  void value(Number number) {
    if constexpr (std::is_signed_v<Number>) {
      number_text(static_cast<long long>(number));
    } else {
      number_text(static_cast<unsigned long long>(number));
    }
  }
  void null();
  /// A value that is JSON text already, such as another writer's output.
  void written(std::string_view json);

  template <typename Value>
  void member(std::string_view name, const Value& content) {
    key(name);
    value(content);
  }

  /// A line break before the next key, value or end: makes the file readable and line-by-line
  /// comparable, and means nothing in JSON.
  void line_break() { break_ = true; }

  /// The text so far; the writer is empty afterwards.
  std::string take() { return std::move(out_); }

 private:
  void open(char sign);
  void close(char sign);
  void before_value();
  void number_text(long long number);
  void number_text(unsigned long long number);
  void quoted(std::string_view text);

  std::string out_;
  bool comma_ = false;  // the next key or value follows another one
  bool break_ = false;
};

}  // namespace rangebook
