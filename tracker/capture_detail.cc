// Parts and categories a capture names.
#include "tracker/capture_detail.h"

#include <algorithm>

namespace rangebook {

bool CaptureDetail::states_part(std::string_view part) {
  if (!parts_) {
    parts_.emplace();
    for (const LineState& line : snapshot_.lines) {
      const auto& composition = interpreter_.composition(line.listing.card.composition);
      if (!composition) continue;
      for (const CompositionPart& each : composition->parts) parts_->insert(each.part);
    }
  }
  return parts_->contains(part);
}

bool CaptureDetail::states_markdowns() {
  if (!markdowns_) {
    markdowns_ =
        std::any_of(snapshot_.lines.begin(), snapshot_.lines.end(), [](const LineState& line) {
          const auto& offers = line.listing.offers.offers;
          return std::any_of(offers.begin(), offers.end(), is_marked_down);
        });
  }
  return *markdowns_;
}

bool CaptureDetail::states_category(std::string_view slug) {
  if (!categories_) {
    categories_.emplace();
    for (const LineState& line : snapshot_.lines) {
      categories_->insert(interpreter_.stated_category(line.listing.card));
    }
  }
  return categories_->contains(slug);
}

}  // namespace rangebook
