// How picks are worded: the same in every report that shows them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "reports/brief_sources.h"
#include "reports/phrase.h"
#include "schema/pick.h"
#include "schema/shop_name.h"

namespace rangebook {

/// `Maya Dress M1`.
Phrase pick_name(const FollowedPick& followed);

/// The chosen words of one list with commas.
std::string chosen_words(const Pick& pick, PickList list);
/// What speaks for it: everything but the cautions.
std::string praise_words(const Pick& pick);

/// The note of a sighting; among sources of several shops the shop's name has to be there.
std::size_t pick_note(const FollowedPick& followed, Sighting seen, SourceList& sources);
std::size_t pick_note(const FollowedPick& followed, const CaptureInfo& capture,
                      SourceList& sources);

/// `there`, `gone`, `not looked at since`: one or two words for a list.
std::string_view state_words(PickState state);
/// What became of it, with days and notes: `there on 7 September 2026[2]; marked down from ..`.
Phrase outcome_phrase(const FollowedPick& followed, SourceList& sources);
/// `8, 10, 12 in red`.
std::string sold_out_words(const std::vector<SoldOutSize>& sizes);

}  // namespace rangebook
