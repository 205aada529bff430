// The differ: what changed between two snapshots. A pure function of values: no SQL, no clock.
#pragma once

#include <vector>

#include "schema/change.h"
#include "schema/link.h"
#include "schema/snapshot.h"

namespace rangebook {

/// Every change between `from` and `to` under `links`. `earlier` lists lines known from captures
/// before `from` (for line-returned). Output order is total; input order does not matter.
ChangeSet diff_snapshots(const Snapshot& from, const Snapshot& to, const LinkSet& links,
                         const std::vector<EarlierLine>& earlier);

/// True when a capture with `scope` looked for lines of `category` (a slug).
bool scope_covers(const Scope& scope, std::string_view category);

}  // namespace rangebook
