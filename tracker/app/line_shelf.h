// The lines of one capture, to look for one: what matches, and how to name each.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "schema/line_history.h"
#include "tracker/app/pipeline.h"
#include "tracker/store/book.h"

namespace rangebook {

struct ShelfRequest {
  std::string shop;
  std::string capture;   ///< season, date or id; empty: the latest
  std::string words;     ///< each in name, code, category, fabric or a colour; empty: every line
  std::string category;  ///< slug; empty: all
  std::size_t most = 400;
};

struct ShelfLine {
  std::string reference;
  SeenLine line;
};

struct LineShelf {
  Shop shop;
  CaptureInfo capture;
  std::vector<ShelfLine> lines;         ///< by name, then code; at most as many as were asked for
  std::size_t found = 0;                ///< all that match
  std::vector<std::string> categories;  ///< slugs in the capture, sorted
};

std::variant<LineShelf, NotThere> lines_on_shelf(const Book& book, const ShelfRequest& request);

}  // namespace rangebook
