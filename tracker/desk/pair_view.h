// Two lines of a pair beside each other, the words in which they differ marked.
#pragma once

#include "reports/html_writer.h"
#include "schema/link_case.h"
#include "tracker/app/pair_sides.h"

namespace rangebook {

void write_pair(HtmlWriter& html, const LinkCase& pair, const PairSides& sides);

}  // namespace rangebook
