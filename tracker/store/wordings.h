// How the lines of a shop were ever named, for finding one by what the stylist types.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "schema/identity.h"
#include "tracker/identity/roll.h"
#include "tracker/store/book.h"

namespace rangebook {

/// One way in which a line was worded, with its latest sighting in these words.
struct Wording {
  SightingAt at;
  LineCard card;
};

/// Every wording of every line of the roll, by sighting. Lines that did not change are read once.
std::vector<Wording> read_wordings(const Book& book, const Roll& roll);

/// The keys under which the lines of a shop are kept (`code:AB1`), by number.
std::map<LineId, std::string> line_keys(const Book& book, std::string_view shop);

}  // namespace rangebook
