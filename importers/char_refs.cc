// Decoding of character references with the table in schema/tables/character_references.tsv.
#include "importers/char_refs.h"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <vector>

#include "importers/byte_search.h"
#include "schema/embedded.h"

namespace rangebook {
namespace {

struct Reference {
  std::string_view name;
  std::string text;  ///< UTF-8
};

std::string read_code_points(std::string_view cell) {
  std::string text;
  while (!cell.empty()) {
    std::uint32_t value = 0;
    const auto end = std::from_chars(cell.data(), cell.data() + cell.size(), value, 16).ptr;
    append_utf8(text, value);
    cell.remove_prefix(static_cast<std::size_t>(end - cell.data()));
    cell.remove_prefix(std::min<std::size_t>(1, cell.size()));
  }
  return text;
}

// Sorted by name, so that the names that begin alike stand together.
const std::vector<Reference>& references() {
  static const std::vector<Reference> table = [] {
    std::vector<Reference> rows;
    for (const auto& row : table_rows("tables/character_references.tsv")) {
      rows.push_back({row[0], read_code_points(row[1])});
    }
    std::sort(rows.begin(), rows.end(),
              [](const Reference& a, const Reference& b) { return a.name < b.name; });
    return rows;
  }();
  return table;
}

// The longest name that `text` begins with.
const Reference* longest_name(std::string_view text) {
  const auto& table = references();
  std::size_t length = 0;
  while (length < text.size() && (is_ascii_letter(text[length]) || is_ascii_digit(text[length]))) {
    ++length;
  }
  if (length < text.size() && text[length] == ';') ++length;
  constexpr std::size_t kLongest = 33;
  for (length = std::min(length, kLongest); length > 1; --length) {
    const auto name = text.substr(0, length);
    const auto at = std::lower_bound(
        table.begin(), table.end(), name,
        [](const Reference& entry, std::string_view wanted) { return entry.name < wanted; });
    if (at != table.end() && at->name == name) return &*at;
  }
  return nullptr;
}

// Numbers 128 to 159 mean their windows-1252 characters.
constexpr char32_t kWindows1252[32] = {
    0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x8D,   0x017D, 0x8F,   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};

int digit_value(char c, bool hex) {
  if (is_ascii_digit(c)) return c - '0';
  const char low = ascii_lower(c);
  return hex && low >= 'a' && low <= 'f' ? low - 'a' + 10 : 16;
}

// Appends the numeric reference `text` begins with (behind "&#"); how many bytes it took.
std::size_t take_number(std::string& out, std::string_view text) {
  const bool hex = !text.empty() && ascii_lower(text.front()) == 'x';
  std::size_t at = hex ? 1 : 0;
  const std::size_t digits = at;
  char32_t value = 0;
  for (; at < text.size() && digit_value(text[at], hex) < 16; ++at) {
    if (value <= 0x10FFFF) {
      value = value * (hex ? 16 : 10) + static_cast<char32_t>(digit_value(text[at], hex));
    }
  }
  if (at == digits) return 0;
  append_utf8(out, value >= 0x80 && value <= 0x9F ? kWindows1252[value - 0x80] : value);
  return at < text.size() && text[at] == ';' ? at + 1 : at;
}

bool stays_in_attribute(std::string_view name, std::string_view after) {
  return name.back() != ';' && !after.empty() &&
         (after.front() == '=' || is_ascii_letter(after.front()) || is_ascii_digit(after.front()));
}

// Appends the reference behind "&"; how many bytes it took, 0 when there is none.
std::size_t take_reference(std::string& out, std::string_view text, bool in_attribute) {
  if (!text.empty() && text.front() == '#') {
    const std::size_t taken = take_number(out, text.substr(1));
    return taken == 0 ? 0 : taken + 1;
  }
  const Reference* found = longest_name(text);
  if (found == nullptr) return 0;
  if (in_attribute && stays_in_attribute(found->name, text.substr(found->name.size()))) return 0;
  out += found->text;
  return found->name.size();
}

std::string decode(std::string_view text, bool in_attribute) {
  std::string out;
  out.reserve(text.size());
  while (!text.empty()) {
    const auto plain = std::min(text.find('&'), text.size());
    out.append(text.substr(0, plain));
    text.remove_prefix(plain);
    if (text.empty()) break;
    const std::size_t taken = take_reference(out, text.substr(1), in_attribute);
    if (taken == 0) out += '&';
    text.remove_prefix(1 + taken);
  }
  return out;
}

}  // namespace

void append_utf8(std::string& out, char32_t code_point) {
  const bool none =
      code_point == 0 || code_point > 0x10FFFF || (code_point >= 0xD800 && code_point <= 0xDFFF);
  const std::uint32_t c = none ? 0xFFFD : code_point;
  const auto byte = [&](std::uint32_t value) { out += static_cast<char>(value); };
  const auto tail = [&](unsigned shift) { byte(0x80U | ((c >> shift) & 0x3FU)); };
  if (c < 0x80) return byte(c);
  if (c < 0x800) return byte(0xC0U | c >> 6U), tail(0);
  if (c < 0x10000) return byte(0xE0U | c >> 12U), tail(6), tail(0);
  byte(0xF0U | c >> 18U), tail(12), tail(6), tail(0);
}

std::string decode_text(std::string_view text) { return decode(text, false); }
std::string decode_attribute(std::string_view text) { return decode(text, true); }

}  // namespace rangebook
