// Fibre shares of two captures: a pure function of the snapshots.
#pragma once

#include "schema/capture.h"
#include "schema/fibre_shares.h"
#include "schema/snapshot.h"

namespace rangebook {

/// Within what both captures looked at. Each line weighs the same, whatever it weighs. Names that
/// are not known count as themselves, in the origin `other`; the smallest fibres are summed up as
/// `other fibres`.
FibrePair compare_fibres(const Snapshot& from, const Snapshot& to, const Scope& common);

}  // namespace rangebook
