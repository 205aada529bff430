// The change set as JSON, `rangebook.changes/1`: the form other programs read. Every key is
// described in schema/FORMAT.md under "Changes JSON".
#pragma once

#include <string>

#include "schema/change.h"

namespace rangebook {

/// One JSON object, UTF-8, ending in a line break; each change stands on a line of its own. Equal
/// change sets give equal bytes. Adding keys is allowed; renaming one makes a new version.
std::string changes_json(const ChangeSet& set);

/// One change in the same form, without a line break.
std::string change_json(const Change& change);

/// An index of millionths as a decimal with six places: `1.031200`.
std::string index_text(std::int64_t millionths);

}  // namespace rangebook
