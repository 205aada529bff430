// Escaping and punctuation of JSON. Runs of plain text are found eight bytes at a time and copied
// whole; everything else is rare in names and prices.
#include "reports/json_writer.h"

#include <charconv>
#include <cstdint>
#include <cstring>

#include "reports/utf8.h"

namespace rangebook {
namespace {

constexpr std::uint64_t kOnes = 0x0101010101010101U;
constexpr std::uint64_t kHighs = 0x8080808080808080U;

/// True when a byte of `word` is zero.
constexpr bool has_zero(std::uint64_t word) { return ((word - kOnes) & ~word & kHighs) != 0; }

/// True when all eight bytes can be copied as they are: ASCII, no control, quote or backslash.
bool all_plain(const char* bytes) {
  std::uint64_t word = 0;
  std::memcpy(&word, bytes, sizeof word);
  const bool below_space = ((word - kOnes * 0x20) & ~word & kHighs) != 0;
  return !below_space && (word & kHighs) == 0 && !has_zero(word ^ (kOnes * '"')) &&
         !has_zero(word ^ (kOnes * '\\'));
}

bool needs_escape(char sign) {
  return static_cast<unsigned char>(sign) < 0x20 || sign == '"' || sign == '\\';
}

/// Bytes from the start of `text` that need no escape and are valid UTF-8.
std::size_t plain_prefix(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    if (text.size() - at >= 8 && all_plain(text.data() + at)) {
      at += 8;
      continue;
    }
    if (needs_escape(text[at])) return at;
    const Utf8Step step = utf8_step(text.substr(at));
    if (!step.valid) return at;
    at += step.bytes;
  }
  return at;
}

void append_escape(std::string& out, char sign) {
  constexpr std::string_view kHex = "0123456789abcdef";
  constexpr std::string_view kSigns = "\"\\\b\f\n\r\t";
  constexpr std::string_view kLetters = "\"\\bfnrt";
  out += '\\';
  if (const auto at = kSigns.find(sign); at != std::string_view::npos) {
    out += kLetters[at];
    return;
  }
  const auto byte = static_cast<unsigned char>(sign);
  out += "u00";
  out += kHex[byte >> 4U];
  out += kHex[byte & 0xFU];
}

template <typename Number>
void append_number(std::string& out, Number number) {
  char digits[24];
  const auto end = std::to_chars(digits, digits + sizeof digits, number).ptr;
  out.append(digits, end);
}

}  // namespace

void JsonWriter::before_value() {
  if (comma_) out_ += ',';
  if (break_) out_ += '\n';
  break_ = false;
  comma_ = true;
}

void JsonWriter::open(char sign) {
  before_value();
  out_ += sign;
  comma_ = false;
}

void JsonWriter::close(char sign) {
  if (break_) out_ += '\n';
  break_ = false;
  out_ += sign;
  comma_ = true;
}

void JsonWriter::key(std::string_view name) {
  before_value();
  quoted(name);
  out_ += ':';
  comma_ = false;
}

void JsonWriter::value(std::string_view text) {
  before_value();
  quoted(text);
}

void JsonWriter::value(bool truth) {
  before_value();
  out_ += truth ? "true" : "false";
}

void JsonWriter::null() {
  before_value();
  out_ += "null";
}

void JsonWriter::written(std::string_view json) {
  before_value();
  out_ += json;
}

void JsonWriter::number_text(long long number) {
  before_value();
  append_number(out_, number);
}

void JsonWriter::number_text(unsigned long long number) {
  before_value();
  append_number(out_, number);
}

void JsonWriter::quoted(std::string_view text) {
  out_ += '"';
  while (!text.empty()) {
    const std::size_t plain = plain_prefix(text);
    out_.append(text.substr(0, plain));
    text.remove_prefix(plain);
    if (text.empty()) break;
    if (needs_escape(text.front())) {
      append_escape(out_, text.front());
      text.remove_prefix(1);
    } else {
      out_ += kReplacement;
      text.remove_prefix(utf8_step(text).bytes);
    }
  }
  out_ += '"';
}

}  // namespace rangebook
