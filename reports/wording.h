// The words of the reports: money, days, sizes, categories and kinds of change as a reader of
// English meets them. One place, so that page, text and Markdown say the same thing.
#pragma once

#include <string>
#include <string_view>

#include "reports/phrase.h"
#include "schema/change.h"

namespace rangebook {

/// `£79.90`, `€79.90`; `79.90 SEK` for currencies whose sign others use too (a dollar sign alone
/// does not say which dollar).
std::string money_words(const Money& money);

/// A signed difference: `+£10.00`.
std::string money_step_words(const Money& step);

/// `2 September 2026`.
std::string day_words(Day day);

/// `dresses`, `jackets & coats`; `the whole range` for `all`, `lines without a category` for
/// `unsorted`.
std::string category_words(std::string_view slug);

/// Likewise of a capture with this scope, where `all` is all that was looked at.
std::string category_words(std::string_view slug, const Scope& scope);

/// Heading of a kind of change, for instance `Sizes widened`.
std::string_view kind_words(ChangeKind kind);

/// What happened to one line: `New line` where the heading is `New lines`.
std::string_view change_words(ChangeKind kind);

/// `UK`, `EU`, `waist x length`; empty where the labels speak for themselves.
std::string_view system_words(SizeSystem system);

/// `UK 6–24`, `petite UK 8–12`, `S–XL`; a single size stands alone; `none` for no sizes.
std::string size_range_words(const SizeFact& sizes);
/// All labels: `UK 8, 12, 14`.
std::string size_list_words(const SizeFact& sizes);

/// A share in tenths of a percent as `12.5%`. With `signs`, a rise is written `+12.5%`.
std::string percent_words(std::int64_t per_mille, bool signs);
/// (after - before) / before in tenths of a percent, half away from zero; nothing for before <= 0.
std::optional<std::int64_t> per_mille_change(std::int64_t before, std::int64_t after);

/// `up 3.1%`, `down 0.4%`, `up less than 0.1%`, `unchanged`, from an index in millionths.
std::string index_words(std::int64_t millionths);

/// `1 line`, `9 lines`.
std::string counted(std::size_t count, std::string_view singular, std::string_view plural);
std::string lines_words(std::size_t count);

/// `AW26`, or `2 September 2026` where both captures have the same season label or none.
std::string capture_words(const CaptureInfo& capture, const CaptureInfo& other);

/// The name of a line; its code where it has none.
std::string_view line_words(const LineRef& line);

/// One side of a change. `gaps` asks for every size label instead of the range.
Phrase fact_phrase(const Fact& fact, bool gaps);
/// Both sides as they stand in the lists: `£79.90` and so on, `-` for no side.
Phrase side_phrase(ChangeKind kind, const std::optional<Fact>& fact);

/// What a related line says of a change, in brackets with a space in front: ` (was the colour navy
/// of Maya Dress M1)`. Empty where no line is related.
Phrase related_phrase(const Change& change);

/// How the two captures add up: `58 carried + 9 new + 1 back = 68 lines now`, and the same for
/// then. Says so where they do not.
Phrase lines_now_phrase(const Reconciliation& sums);
Phrase lines_then_phrase(const Reconciliation& sums);

}  // namespace rangebook
