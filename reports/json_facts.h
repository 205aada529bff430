// JSON shapes that several reports share.
#pragma once

#include "reports/json_writer.h"
#include "schema/change.h"

namespace rangebook {

/// A date by ISO 8601, or null.
void write_day(JsonWriter& json, std::string_view key, const std::optional<Day>& day);

/// `id`, `season`, `date`, `scope`.
void write_capture(JsonWriter& json, const CaptureInfo& capture);

/// `["0.006100","0.171800"]`.
void write_interval(JsonWriter& json, const ShareInterval& interval);

/// `days`, `marked_down`, `lower`, `not_lower`, `not_checked`, `findings[]`; null if there is none.
/// Only findings about lines of `category` are written, unless it is empty or `all`.
void write_was_prices(JsonWriter& json, const ChangeSet& set, std::string_view category);

/// All keys of a ladder, as in a category summary.
void write_ladder(JsonWriter& json, const PriceLadder& prices);

}  // namespace rangebook
