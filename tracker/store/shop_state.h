// Whether anything about a shop changed in the book, told without reading its lines.
#pragma once

#include <map>
#include <string>

#include "tracker/store/book.h"

namespace rangebook {

/// A text for each shop, by slug. While it stays as it is, nothing of the shop was captured or
/// taken back, read again, decided about its lines, or set otherwise; what was worked out from that
/// still holds. Captures and decisions have numbers that are never used again, so how many there
/// are and the highest number tell every set of them from an earlier one, and readings only add up;
/// the newest document's hash is for a book that was put in the place of another.
std::map<std::string, std::string> shop_states(const Book& book);

}  // namespace rangebook
