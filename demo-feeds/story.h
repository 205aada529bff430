// What the scenario tells of one shop: its captures in order, and the events between two of them.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "demo-feeds/invent.h"
#include "demo-feeds/range.h"
#include "demo-feeds/turn.h"

namespace demo {

/// How a shop's table export looks in one season.
struct Dialect {
  char separator = ',';
  char decimal_sign = '.';
  bool byte_order_mark = false;
  bool row_per_variant = true;   ///< else one row a line, sizes as a range or list
  bool american_grey = false;    ///< "Gray" for "Grey": the same colour in another spelling
  bool variant_columns = false;  ///< adds `gtin`
  std::string in_stock = "yes";
  std::string sold_out = "no";
  Wording wording = Wording::share_first;
};

/// The colour as a feed of this dialect spells it.
std::string spelled(const std::string& colour, const Dialect& dialect);

/// What the stylist was given or exported.
enum class TableForm { csv, workbook, json, xml };
/// How the pages were saved: one file each in a folder; the same in a zip archive; in a folder, one
/// of them with its parts ("complete") and one as MHTML.
enum class PagesForm { folder, zip, mixed };

struct Capture {
  std::string season{};  ///< `AW26`
  std::string date{};    ///< ISO 8601
  std::string scope = "all";
  Range range{};
  Dialect dialect{};
  TableForm table = TableForm::csv;
  PagesForm pages = PagesForm::folder;
  std::set<std::string> as_pages{};  ///< departments saved as product pages, not exported
  std::vector<Style> nameless{};     ///< rows whose name was left out: the program must refuse them
};

struct Comparison {
  std::size_t from = 0;  ///< index into Story::captures
  std::size_t to = 0;
  std::vector<Event> events{};
};

struct Story {
  House house{};
  std::vector<Capture> captures{};
  std::vector<Comparison> comparisons{};
};

Story skerrowby();      ///< widens its sizes, in some categories only
Story tidewell_marr();  ///< codes its whole range anew
Story ostrel_house();   ///< moves prices, fabrics and markdowns
Story pellorie();       ///< only half captured the second time

}  // namespace demo
