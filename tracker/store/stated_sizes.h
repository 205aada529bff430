// The size ranges that shops state, in the book.
#pragma once

#include <string_view>
#include <vector>

#include "schema/size_report.h"
#include "tracker/store/book.h"

namespace rangebook {

/// Adds what the shop states on a date, or corrects it. The shop must be in the book.
void put_stated_sizes(const Book& book, std::string_view shop, const StatedSizes& stated);

/// By date.
std::vector<StatedSizes> stated_sizes(const Book& book, std::string_view shop);

}  // namespace rangebook
