// Reading size labels, ranges and sets.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "schema/size.h"

namespace rangebook {

/// Bad input in a size cell, in words for the user.
struct SizeProblem {
  std::string what;        ///< one sentence
  std::string how_to_fix;  ///< one sentence
};

inline constexpr std::size_t kMaxSizeCellBytes = 4096;
inline constexpr std::size_t kMaxSizesPerCell = 100;

/// The labels a size cell stands for, in the order written, each once; none for an empty cell.
///
/// - List: parts between `|`, `;`, `,` or line ends; `8 10 12`, `10 & 12` and `S M L`; three or
///   more with slashes or dashes (`S/M/L`). `38,5` with nothing around the comma is one half size.
/// - Range: `8-20`, `8 to 20`, `XS-XL`, any dash. It expands in its size system: UK 8-20 has 8, 10,
///   .. 20; EU shoes 36-41 go in ones. Words around it go to every label: `UK 8-20` has `UK 8`,
///   `8-20 Petite` has `8 Petite`.
/// - Dual size: a dash between neighbouring steps is one label, `12-14` or `S-M`, because a range
/// of
///   two is written as a list; with the word `to` it is a range. `S/M` and `12/14` are dual.
/// - Everything else is one label, verbatim and trimmed: a cell is never refused for being unknown.
///
/// A problem: a range whose end is not above its start, that is off its system's steps, mixes
/// systems or fits, or has two measures (`32A-38DD`); and passing a limit above.
std::variant<std::vector<std::string>, SizeProblem> expand_sizes(std::string_view cell,
                                                                 SizeSystem shop_default);

/// What each label means, in the order given. The whole set of a line is read together, since a
/// lone label can be ambiguous: the shop's default decides bare numbers as long as all of them are
/// on its grid; words and marks in the labels ("UK 12", "14W", "10 Petite", "12L", "EU 38") decide
/// over it. Where the default is unknown or does not fit, a system is named only if no other can be
/// meant (see system_of_numbers); otherwise the labels are unknown and never ranked. To compare two
/// captures of a line, interpret the union of both label sets at once: then a label means the same
/// on both sides.
std::vector<Size> interpret_sizes(std::span<const std::string> labels, SizeSystem shop_default);

/// `a` comes before `b` in lists: by system, fit, position, then label. Total.
bool size_less(const Size& a, const Size& b);

}  // namespace rangebook
