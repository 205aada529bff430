// From a glimpse of a line back to all of it.
#include "tracker/app/pair_sides.h"

#include "tracker/app/identity_stage.h"
#include "tracker/line_history.h"

namespace rangebook {
namespace {

std::optional<SeenLine> whole_line(ShopLines& lines, const LineGlimpse& glimpse) {
  if (!glimpse.seen) return std::nullopt;
  const Roll& roll = lines.roll();
  const auto place = place_of(roll, glimpse.seen->capture);
  if (!place) return std::nullopt;
  const auto row = row_of(roll.captures[*place], glimpse.id);
  if (!row) return std::nullopt;
  HistoryCapture capture{roll.captures[*place].info, {}, {}};
  capture.line = lines.source().lines(*place, {*row}).front();
  return tell_history(roll.shop, {std::move(capture)}).front().line;
}

}  // namespace

PairSides sides_of(ShopLines& lines, const LinkCase& pair) {
  return {whole_line(lines, pair.then), whole_line(lines, pair.now)};
}

}  // namespace rangebook
