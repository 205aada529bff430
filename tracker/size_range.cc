// Expanding size cells: lists of labels and ranges. A range is cut into the text around it and two
// ends; both ends get the same text, are read as labels, and the steps between them are written in
// the style of the first.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "tracker/size_grid.h"
#include "tracker/size_label.h"
#include "tracker/size_list.h"
#include "tracker/size_parser.h"
#include "tracker/text_fold.h"

namespace rangebook {
namespace {

using Labels = std::vector<std::string>;
using Expansion = std::variant<Labels, SizeProblem>;

/// Where a range's sign stands in a part.
struct RangeSign {
  std::size_t begin = 0;
  std::size_t end = 0;
  bool word = false;  ///< "to" cannot mean a dual size
};

constexpr std::array<std::pair<std::string_view, bool>, 13> kRangeSigns{{
    {"-", false},
    {"\xE2\x80\x90", false},
    {"\xE2\x80\x91", false},
    {"\xE2\x80\x92", false},
    {"\xE2\x80\x93", false},
    {"\xE2\x80\x94", false},
    {"\xE2\x88\x92", false},
    {" to ", true},
    {" TO ", true},
    {" To ", true},
    {" bis ", true},
    {" \xC3\xA0 ", true},
    {" t/m ", true},
}};

std::optional<RangeSign> next_sign(std::string_view part, std::size_t from) {
  std::optional<RangeSign> best;
  for (const auto& [sign, word] : kRangeSigns) {
    const auto at = part.find(sign, from);
    if (at == std::string_view::npos || (best && best->begin <= at)) continue;
    best = RangeSign{at, at + sign.size(), word};
  }
  return best;
}

/// One end of a range: the size itself and the words before and after it.
struct RangeEnd {
  std::string_view before;
  std::string_view core;
  std::string_view after;
};

RangeEnd number_end(std::string_view side) {
  const auto begin =
      std::min(static_cast<std::size_t>(std::find_if(side.begin(), side.end(), is_ascii_digit) -
                                        side.begin()),
               side.size());
  auto end = begin;
  while (end < side.size() && is_ascii_digit(side[end])) ++end;
  const bool decimal = end + 1 < side.size() && (side[end] == '.' || side[end] == ',') &&
                       is_ascii_digit(side[end + 1]);
  if (decimal) end += 2;
  return {side.substr(0, begin), side.substr(begin, end - begin), side.substr(end)};
}

std::vector<std::pair<std::size_t, std::size_t>> word_bounds(std::string_view side) {
  std::vector<std::pair<std::size_t, std::size_t>> words;
  for (std::size_t i = 0; i < side.size();) {
    const auto end = std::min(side.find(' ', i), side.size());
    if (end > i) words.emplace_back(i, end);
    i = end + 1;
  }
  return words;
}

/// The fewest words that alone give the rank of the whole: `XL` of `XL Petite`, all of
/// `Extra Large`.
RangeEnd alpha_end_of(std::string_view side, int rank) {
  const auto words = word_bounds(side);
  for (std::size_t count = 1; count <= words.size(); ++count) {
    for (std::size_t first = 0; first + count <= words.size(); ++first) {
      const auto begin = words[first].first;
      const auto end = words[first + count - 1].second;
      const auto core = side.substr(begin, end - begin);
      const auto reading = read_size_label(core, SizeSystem::unknown);
      if (reading.shape == SizeShape::alpha && reading.low == rank) {
        return {side.substr(0, begin), core, side.substr(end)};
      }
    }
  }
  return {{}, side, {}};
}

RangeEnd end_of(std::string_view side, const SizeReading& reading) {
  return reading.shape == SizeShape::alpha ? alpha_end_of(side, reading.low) : number_end(side);
}

/// A range with the words around it settled; `first` and `last` are whole labels.
struct Range {
  std::string_view part;
  RangeSign sign;
  std::string_view before;
  std::string_view after;
  RangeEnd low;
  RangeEnd high;
  std::string first;
  std::string last;
  SizeReading from;
  SizeReading to;
};

SizeProblem problem(std::string_view part, std::string_view why) {
  return {fmt::format("The size range \"{}\" {}.", part, why),
          "List the sizes one by one, for instance 8|10|12."};
}

/// A range whose steps are not known.
SizeProblem off_scale(std::string_view part, SizeSystem system) {
  if (system == SizeSystem::unknown) {
    return {fmt::format("The steps of the size range \"{}\" are not known.", part),
            "Set the shop's size system, or list the sizes one by one, for instance 8|10|12."};
  }
  return {fmt::format("The size range \"{}\" is not on its scale ({}).", part, to_string(system)),
          "Write the system before it (UK 8-20), or list the sizes one by one (8|10|12)."};
}

bool same_words(std::string_view a, std::string_view b) {
  return fold_text(trim_text(a)) == fold_text(trim_text(b));
}

/// Words before the first end and after the last one belong to both; words in between have to be
/// the same.
std::optional<SizeProblem> settle_words(Range& range, SizeSystem shop_default) {
  const bool before_ok =
      trim_text(range.high.before).empty() || same_words(range.low.before, range.high.before);
  const bool after_ok =
      trim_text(range.low.after).empty() || same_words(range.low.after, range.high.after);
  if (!before_ok || !after_ok) {
    return problem(range.part, "mixes size systems, fits or measures");
  }
  range.before = range.low.before;
  range.after = range.high.after;
  range.first = fmt::format("{}{}{}", range.before, range.low.core, range.after);
  range.last = fmt::format("{}{}{}", range.before, range.high.core, range.after);
  range.from = read_size_label(range.first, shop_default);
  range.to = read_size_label(range.last, shop_default);
  const bool alike = range.from.shape == range.to.shape && range.from.mark == range.to.mark &&
                     range.from.fit == range.to.fit && range.from.second == range.to.second;
  if (!alike) return problem(range.part, "mixes size systems, fits or measures");
  return std::nullopt;
}

/// The distance of neighbouring sizes in tenths, or nothing when the system cannot be told.
std::optional<int> step_between(const SizeReading& from, const SizeReading& to,
                                SizeSystem shop_default) {
  NumberSet ends;
  ends.add(from.low);
  ends.add(to.low);
  switch (from.shape) {
    case SizeShape::number: {
      const auto system =
          system_of_numbers(ends, from.mark.value_or(shop_default), from.mark.has_value());
      if (system == SizeSystem::unknown) return std::nullopt;
      return ends.halves ? 5 : step_of(system);
    }
    case SizeShape::w_number:
      return shop_default == SizeSystem::us || from.low < 230 ? 20 : 10;
    case SizeShape::alpha:
    case SizeShape::waist:
      return 10;
    case SizeShape::bra:
      return from.mark == SizeSystem::bra_eu ? 50 : 20;
    case SizeShape::unknown:
    case SizeShape::dash_pair:
    case SizeShape::slash_pair:
    case SizeShape::one_size:
      return std::nullopt;
  }
  return std::nullopt;
}

std::string number_text(int tenths, std::string_view style) {
  if (tenths < 0) return std::string(tenths == -10 ? "00" : "000");
  if (tenths % 10 == 0) return fmt::format("{}", tenths / 10);
  const char sign = style.find(',') == std::string_view::npos ? '.' : ',';
  return fmt::format("{}{}{}", tenths / 10, sign, tenths % 10);
}

constexpr std::size_t kLongestLetters = 4;  ///< XXXL; longer ones are words: Small

std::string alpha_text(int rank, FitRange fit, std::string_view style) {
  if (fit == FitRange::plus && rank > 0 && style.size() < kLongestLetters) {
    return fmt::format("{}X", rank / 10);
  }
  const bool words = style.size() > kLongestLetters;
  if (rank == 0) return words ? "Medium" : "M";
  const int xs = (rank < 0 ? -rank : rank) / 10 - 1;
  const std::string_view end = rank < 0 ? (words ? "Small" : "S") : (words ? "Large" : "L");
  const std::string_view joint = words && xs > 0 ? "-" : "";
  const std::string front =
      xs > 2 ? fmt::format("{}X", xs) : std::string(static_cast<std::size_t>(xs), 'X');
  return fmt::format("{}{}{}", front, joint, end);
}

std::string size_text(const Range& range, int value) {
  auto text = range.from.shape == SizeShape::alpha
                  ? alpha_text(value, range.from.fit, range.low.core)
                  : number_text(value, range.low.core);
  if (range.from.shape == SizeShape::alpha && range.low.core == fold_text(range.low.core)) {
    text = fold_text(text);
  }
  return fmt::format("{}{}{}", range.before, text, range.after);
}

Expansion write_out(const Range& range, int step) {
  const int from = range.from.low;
  const int to = range.to.low;
  if ((to - from) % step != 0 && from >= 0) {
    return problem(range.part, "has an end that is no step of its size system");
  }
  Labels labels{std::string(trim_text(range.first))};
  for (int at = from < 0 && step == 20 ? from + 10 : from + step; at < to;
       at += at < 0 && step == 20 ? 10 : step) {
    if (labels.size() >= kMaxSizesPerCell) return problem(range.part, "has too many steps");
    labels.emplace_back(trim_text(size_text(range, at)));
  }
  labels.emplace_back(trim_text(range.last));
  return labels;
}

constexpr int kDualStep = 20;

Expansion expand_range(Range range, SizeSystem shop_default) {
  if (auto bad = settle_words(range, shop_default)) return *bad;
  const int distance = range.to.low - range.from.low;
  if (distance <= 0) return problem(range.part, "does not end above its start");
  const bool is_label =
      !range.sign.word && read_size_label(range.part, shop_default).shape != SizeShape::unknown;
  const auto step = step_between(range.from, range.to, shop_default);
  if (is_label && distance <= step.value_or(kDualStep)) return Labels{std::string(range.part)};
  if (step) return write_out(range, *step);
  return off_scale(range.part, range.from.mark.value_or(shop_default));
}

/// A short word that should have been a size ("XS-XLL"), not a remark ("12 - last one").
bool looks_mistyped(std::string_view side) {
  return !side.empty() && side.size() <= kLongestLetters && side.find(' ') == side.npos;
}

bool is_single(const SizeReading& reading) {
  return reading.shape != SizeShape::unknown && reading.low == reading.high;
}

/// One part of a list: a label, or a range at the first sign with a size on both sides.
Expansion expand_part(std::string_view part, SizeSystem shop_default) {
  if (!is_single(read_size_label(part, shop_default))) {
    for (auto sign = next_sign(part, 0); sign; sign = next_sign(part, sign->end)) {
      const auto left = trim_text(part.substr(0, sign->begin));
      const auto right = trim_text(part.substr(sign->end));
      const auto from = read_size_label(left, shop_default);
      const auto to = read_size_label(right, shop_default);
      if (is_single(from) && is_single(to)) {
        return expand_range(
            {part, *sign, {}, {}, end_of(left, from), end_of(right, to), {}, {}, from, to},
            shop_default);
      }
      if (is_single(from) && looks_mistyped(right)) {
        return problem(part, fmt::format("ends with \"{}\", which is no size", right));
      }
    }
  }
  return Labels{std::string(part)};
}

bool is_plain_label(std::string_view cell) {
  return cell.size() <= kMaxSizeLabelBytes && std::all_of(cell.begin(), cell.end(), [](char c) {
           return is_ascii_digit(c) || is_ascii_letter(c) || c == '.';
         });
}

std::optional<SizeProblem> append_part(std::string_view part, SizeSystem shop_default,
                                       Labels& labels) {
  if (part.size() > kMaxSizeLabelBytes) {
    return SizeProblem{
        fmt::format("A size of {} bytes is too long to be one.", part.size()),
        fmt::format("Shorten it to {} bytes, or separate sizes with |.", kMaxSizeLabelBytes)};
  }
  auto expansion = expand_part(part, shop_default);
  if (auto* bad = std::get_if<SizeProblem>(&expansion)) return std::move(*bad);
  for (auto& label : std::get<Labels>(expansion)) {
    if (std::find(labels.begin(), labels.end(), label) == labels.end()) {
      labels.push_back(std::move(label));
    }
  }
  if (labels.size() <= kMaxSizesPerCell) return std::nullopt;
  return SizeProblem{fmt::format("The cell lists more than {} sizes.", kMaxSizesPerCell),
                     "Spread the sizes over several rows."};
}

}  // namespace

std::variant<std::vector<std::string>, SizeProblem> expand_sizes(std::string_view cell,
                                                                 SizeSystem shop_default) {
  cell = trim_text(cell);
  if (cell.empty()) return Labels{};
  if (is_plain_label(cell)) return Labels{std::string(cell)};
  if (cell.size() > kMaxSizeCellBytes) {
    return SizeProblem{fmt::format("A size cell of {} bytes is too long.", cell.size()),
                       fmt::format("Use at most {} bytes; spread the sizes over several rows.",
                                   kMaxSizeCellBytes)};
  }
  Labels labels;
  for (const auto part : split_size_list(cell)) {
    if (auto bad = append_part(part, shop_default, labels)) return std::move(*bad);
  }
  return labels;
}

}  // namespace rangebook
