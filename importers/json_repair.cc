// One pass over a JSON text, copying what is right.
#include "importers/json_repair.h"

#include <algorithm>
#include <array>

#include "importers/byte_search.h"
#include "importers/utf8_sequence.h"

namespace rangebook {
namespace {

constexpr std::string_view kQuoteReference = "&quot;";
constexpr std::string_view kReplacement = "\xEF\xBF\xBD";  // U+FFFD

// What stands around JSON on pages written for XHTML or for very old browsers.
constexpr auto kWrappers = std::to_array<std::string_view>(
    {"\xEF\xBB\xBF", "\xC2\xA0", "<![CDATA[", "]]>", "<!--", "-->", ";"});

bool is_hex(char c) {
  const char low = ascii_lower(c);
  return is_ascii_digit(c) || (low >= 'a' && low <= 'f');
}

bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20; }

}  // namespace

RepairedJson::RepairedJson(std::string_view text)
    : source_(text),
      escaped_quotes_(text.find('"') == text.npos && text.find(kQuoteReference) != text.npos) {
  text_.reserve(text.size());
  while (pos_ < source_.size()) in_string_ ? inside_string() : outside_string();
}

std::size_t RepairedJson::source_offset(std::size_t offset) const {
  const auto after = std::upper_bound(edits_.begin(), edits_.end(), offset,
                                      [](std::size_t at, const Edit& e) { return at < e.offset; });
  if (after == edits_.begin()) return std::min(offset, source_.size());
  const Edit& edit = *std::prev(after);
  return std::min(edit.source + (offset - edit.offset), source_.size());
}

void RepairedJson::copy(std::size_t bytes) {
  text_.append(source_.substr(pos_, bytes));
  pos_ += bytes;
}

void RepairedJson::replace(std::size_t bytes, std::string_view by) {
  text_.append(by);
  pos_ += bytes;
  edits_.push_back({text_.size(), pos_});
}

void RepairedJson::drop(std::size_t bytes) { replace(bytes, {}); }

bool RepairedJson::take_quote() {
  if (!escaped_quotes_ && at("\"")) return copy(1), true;
  if (escaped_quotes_ && at(kQuoteReference)) return replace(kQuoteReference.size(), "\""), true;
  return false;
}

bool RepairedJson::skip_wrapper() {
  for (const auto wrapper : kWrappers) {
    if (at(wrapper)) return drop(wrapper.size()), true;
  }
  return false;
}

bool RepairedJson::skip_comment() {
  const std::string_view rest = source_.substr(pos_);
  std::size_t length = rest.npos;
  if (rest.starts_with("//")) {
    length = rest.find('\n');
    // "//<![CDATA[" and "//]]>" hide the wrapper from a script, not the rest of a one-line block.
    if (rest.starts_with("//<![CDATA[") || rest.starts_with("//]]>")) length = 2;
  } else if (rest.starts_with("/*")) {
    const auto close = rest.find("*/", 2);
    if (close != rest.npos) length = close + 2;
  } else {
    return false;
  }
  return drop(std::min(length, rest.size())), true;
}

// A comma that the value before already has, or that closes a list, is blanked.
void RepairedJson::drop_comma() {
  const auto last = text_.find_last_not_of(" \t\r\n");
  if (last != text_.npos && text_[last] == ',') text_[last] = ' ';
}

void RepairedJson::outside_string() {
  if (take_quote()) {
    in_string_ = true;
    return;
  }
  if (skip_wrapper() || skip_comment()) return;
  const char c = source_[pos_];
  if (c == '}' || c == ']' || c == ',') drop_comma();
  if (is_control(c) && !is_html_space(c)) return drop(1);
  if (c == '\f') return replace(1, " ");
  copy(1);
}

void RepairedJson::inside_string() {
  if (take_quote()) {
    in_string_ = false;
    return;
  }
  const char c = source_[pos_];
  if (c == '\\') return escape();
  if (c == '\n') return replace(1, "\\n");
  if (c == '\r' || c == '\t') return replace(1, c == '\r' ? "\\r" : "\\t");
  if (is_control(c)) return replace(1, " ");
  copy_utf8();
}

// An escape that JSON does not know (`\'`, `\x`) loses its backslash.
void RepairedJson::escape() {
  constexpr std::string_view kKnown = "\"\\/bfnrt";
  const std::string_view rest = source_.substr(pos_ + 1);
  if (rest.empty()) return drop(1);
  if (kKnown.find(rest.front()) != kKnown.npos) return copy(2);
  const auto digits = rest.substr(1, 4);
  const bool unicode = rest.front() == 'u' && digits.size() == 4 &&
                       std::all_of(digits.begin(), digits.end(), is_hex);
  if (unicode) return copy(6);
  drop(1);
}

void RepairedJson::copy_utf8() {
  const std::size_t size = utf8_sequence(source_.substr(pos_, 4));
  if (size != 0) return copy(size);
  ++bad_bytes_;
  replace(1, kReplacement);
}

}  // namespace rangebook
