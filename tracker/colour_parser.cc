// Colour names: lists, keys, and values from the table.
#include "tracker/colour_parser.h"

#include <algorithm>
#include <array>
#include <unordered_map>

#include "schema/embedded.h"
#include "schema/error.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

bool is_gap(char c) { return c == ' ' || c == '-' || c == '_'; }

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (auto at = text.find(from); at != text.npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

std::uint8_t hex_byte(std::string_view hex) {
  int value = 0;
  for (const char c : hex) value = value * 16 + (is_ascii_digit(c) ? c - '0' : c - 'a' + 10);
  return static_cast<std::uint8_t>(value);
}

Srgb colour_of_hex(std::string_view hex) {
  const bool digits = hex.size() == 7 && hex.front() == '#' &&
                      hex.find_first_not_of("0123456789abcdef", 1) == std::string_view::npos;
  if (!digits) throw Error("tables/colours.tsv has a bad value: " + std::string(hex));
  return {hex_byte(hex.substr(1, 2)), hex_byte(hex.substr(3, 2)), hex_byte(hex.substr(5, 2))};
}

/// Names without gaps, so that "midnight blue" finds CSS midnightblue.
std::string joined_key(std::string_view key) {
  std::string joined;
  for (const char c : key) {
    if (c != ' ') joined += c;
  }
  return joined;
}

using Values = std::unordered_map<std::string, Srgb>;

/// The table; its earlier rows win.
const Values& values() {
  static const Values table = [] {
    Values read;
    for (const auto& row : table_rows("tables/colours.tsv")) {
      read.emplace(joined_key(colour_key(row.at(0))), colour_of_hex(row.at(1)));
    }
    return read;
  }();
  return table;
}

std::vector<std::string_view> words_of(std::string_view key) {
  std::vector<std::string_view> words;
  while (!key.empty()) {
    const auto end = std::min(key.find(' '), key.size());
    if (end > 0) words.push_back(key.substr(0, end));
    key.remove_prefix(std::min(end + 1, key.size()));
  }
  return words;
}

constexpr std::array<std::string_view, 5> kSecondColour{"and", "with", "on", "&", "+"};

/// The first colour of a two-tone name: up to a slash, a comma, "and" or "with".
std::vector<std::string_view> first_colour(std::string_view key) {
  auto words = words_of(key.substr(0, key.find_first_of("/,&+(")));
  const auto second =
      std::find_first_of(words.begin(), words.end(), kSecondColour.begin(), kSecondColour.end());
  if (second != words.begin()) words.erase(second, words.end());
  return words;
}

constexpr std::size_t kLongestName = 4;  ///< words: light goldenrod yellow has three

std::optional<Srgb> value_ending_at(const std::vector<std::string_view>& words, std::size_t end) {
  for (auto count = std::min(kLongestName, end); count > 0; --count) {
    std::string name;
    for (auto i = end - count; i < end; ++i) name += words[i];
    if (const auto found = values().find(name); found != values().end()) return found->second;
  }
  return std::nullopt;
}

}  // namespace

std::vector<std::string> split_colours(std::string_view cell) {
  std::vector<std::string> colours;
  while (!cell.empty()) {
    const auto end = std::min(cell.find_first_of("|;\n\r"), cell.size());
    const auto colour = trim_text(cell.substr(0, end));
    if (!colour.empty()) colours.emplace_back(colour);
    cell.remove_prefix(std::min(end + 1, cell.size()));
  }
  return colours;
}

std::string colour_key(std::string_view name) {
  std::string key;
  for (const char c : fold_text(name)) {
    if (c == '/' && key.ends_with(' ')) key.pop_back();
    const bool gap_here = key.empty() || key.back() == ' ' || key.back() == '/';
    if (!is_gap(c)) {
      key += c;
    } else if (!gap_here) {
      key += ' ';
    }
  }
  if (key.ends_with(' ')) key.pop_back();
  replace_all(key, "gray", "grey");
  return key;
}

std::optional<Srgb> colour_value(std::string_view name) {
  if (name.size() > kMaxColourBytes) return std::nullopt;
  const auto key = colour_key(name);
  if (const auto whole = values().find(joined_key(key)); whole != values().end()) {
    return whole->second;
  }
  const auto words = first_colour(key);
  for (auto end = words.size(); end > 0; --end) {
    if (const auto value = value_ending_at(words, end)) return value;
  }
  return std::nullopt;
}

}  // namespace rangebook
