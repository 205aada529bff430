// Refused rows as the other capture would know them: a row that could not be read may be a line
// under a new code.
#pragma once

#include <vector>

#include "schema/snapshot.h"

namespace rangebook {

/// The refused rows of `refusing`, with which to look for lines of `other`. A row under a code that
/// `other` has is that line and no other. Under a code that `other` does not have it may be a line
/// that was re-coded: such a row, and one without a code, stands for the lines of `other` with its
/// name. Words that nearly every name of a capture has, such as the name of the house, do not
/// count.
std::vector<RefusedLine> refused_for(const Snapshot& refusing, const Snapshot& other);

}  // namespace rangebook
