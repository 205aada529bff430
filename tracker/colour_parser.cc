// Colour names: lists and keys.
#include "tracker/colour_parser.h"

#include <algorithm>

#include "tracker/text_fold.h"

namespace rangebook {
namespace {

bool is_gap(char c) { return c == ' ' || c == '-' || c == '_'; }

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (auto at = text.find(from); at != text.npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
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

}  // namespace rangebook
