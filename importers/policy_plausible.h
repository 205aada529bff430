// What cannot well be so: a next-day delivery that takes a week, free from less than the fee.
#pragma once

#include "schema/terms_reading.h"

namespace rangebook {

/// Moves what contradicts the rest of the reading from its terms to its doubts.
void doubt_implausible(TermsReading& reading);

}  // namespace rangebook
