// List separators in size cells, strong ones first.
#include "tracker/size_list.h"

#include <algorithm>
#include <array>
#include <cstddef>

#include "tracker/size_label.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

using Parts = std::vector<std::string_view>;

/// `38,5` is a half size; `4,5` is a list, since a list is written upwards.
bool is_decimal_comma(std::string_view cell, std::size_t comma) {
  const bool half = comma + 1 < cell.size() && cell[comma + 1] == '5' &&
                    (comma + 2 == cell.size() || !is_ascii_digit(cell[comma + 2]));
  if (!half || comma == 0 || !is_ascii_digit(cell[comma - 1])) return false;
  const bool two_digits = comma > 1 && is_ascii_digit(cell[comma - 2]);
  return two_digits || cell[comma - 1] > '5';
}

bool separates(std::string_view cell, std::size_t at) {
  const char c = cell[at];
  return c == '|' || c == ';' || c == '\n' || c == '\r' ||
         (c == ',' && !is_decimal_comma(cell, at));
}

template <typename Separates>
Parts cut(std::string_view text, Separates is_separator) {
  Parts parts;
  std::size_t begin = 0;
  for (std::size_t at = 0; at <= text.size(); ++at) {
    if (at < text.size() && !is_separator(at)) continue;
    const auto part = trim_text(text.substr(begin, at - begin));
    if (!part.empty()) parts.push_back(part);
    begin = at + 1;
  }
  return parts;
}

/// True when all parts are plain sizes of one shape: numbers, or letters.
bool all_plain(const Parts& parts) {
  SizeShape shape = SizeShape::unknown;
  return std::all_of(parts.begin(), parts.end(), [&](std::string_view part) {
    const auto reading = read_size_label(part, SizeSystem::unknown);
    const bool plain = (reading.shape == SizeShape::number || reading.shape == SizeShape::alpha) &&
                       !reading.mark && reading.low == reading.high;
    const bool same = shape == SizeShape::unknown || shape == reading.shape;
    shape = reading.shape;
    return plain && same;
  });
}

/// Signs that part sizes only where all parts are plain, with the fewest parts that make a list:
/// two with a slash or a dash are a dual size or a range.
struct WeakSign {
  char sign = ' ';
  std::size_t least = 2;
};
constexpr std::array<WeakSign, 4> kWeakSigns{{{'/', 3}, {'-', 3}, {'&', 2}, {' ', 2}}};

void append_weak_list(std::string_view part, Parts& out) {
  for (const auto& weak : kWeakSigns) {
    const auto sizes = cut(part, [&](std::size_t at) { return part[at] == weak.sign; });
    if (sizes.size() < weak.least || !all_plain(sizes)) continue;
    out.insert(out.end(), sizes.begin(), sizes.end());
    return;
  }
  out.push_back(part);
}

}  // namespace

std::vector<std::string_view> split_size_list(std::string_view cell) {
  Parts out;
  for (const auto part : cut(cell, [&](std::size_t at) { return separates(cell, at); })) {
    append_weak_list(part, out);
  }
  return out;
}

}  // namespace rangebook
