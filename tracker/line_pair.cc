// Evidence and identity of the changes of one line.
#include "tracker/line_pair.h"

#include <string>
#include <utility>

namespace rangebook {

Sighting sighting_of(const CaptureInfo& capture) {
  Sighting sighting;
  sighting.capture = capture.id;
  sighting.on = capture.on;
  sighting.season = capture.season;
  return sighting;
}

Sighting sighting_of(const CaptureInfo& capture, const Origin& origin) {
  Sighting sighting = sighting_of(capture);
  if (origin.document < capture.documents.size()) {
    sighting.document = capture.documents[origin.document].name;
  }
  sighting.line = origin.line;
  return sighting;
}

LineRef line_ref(LineId id, const LineState& state, std::string_view category) {
  return {id, state.listing.card.line_code, state.listing.card.name, std::string(category)};
}

NameFact name_fact(const LineState& state) {
  return {state.listing.card.line_code, state.listing.card.name};
}

void PairChanges::add(ChangeKind kind, std::optional<Fact> before, std::optional<Fact> after) {
  if (!line_) {
    line_ = line_ref(pair_.before->id, *pair_.after, interpreter_.category(pair_.now().card));
    evidence_ = {sighting_of(from_, pair_.then().origin), sighting_of(to_, pair_.now().origin),
                 pair_.link->sentence};
  }
  changes_.push_back({kind, line_, {}, std::move(before), std::move(after), evidence_});
}

}  // namespace rangebook
