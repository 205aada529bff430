// The stylist's desk for links: what waits, saying yes or no, taking it back. The same functions
// serve the command line and pages.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "schema/link_case.h"
#include "tracker/app/pipeline.h"
#include "tracker/app/request.h"
#include "tracker/store/book.h"

namespace rangebook {

/// What waits and what was decided. With ends in the request, of what waits only what came up in
/// captures after `from` up to `to`; decisions are always all.
std::variant<LinkList, NotThere> list_links(const Book& book, const CompareRequest& request);

/// How many pairs wait in a shop; 0 where there is no such shop.
std::size_t links_waiting(const Book& book, const std::string& shop);

class ShopLines;
/// The same of lines that are read already, all of it. The shop has a capture.
LinkList list_links(ShopLines& lines);

/// A decision that was kept, or taken back.
struct Settled {
  LinkCase about;           ///< `same` as it is now
  std::optional<bool> was;  ///< what held before
};
using SettledOrNot = std::variant<std::vector<Settled>, NotThere>;

/// Says yes (`same`) or no to pairs by their references, waiting or decided. All are kept, or, when
/// one is not found or contradicts what was said before, none. `shop` may be empty: every shop.
SettledOrNot settle_links(Book& book, const std::string& shop,
                          const std::vector<std::string>& references, bool same);

/// Two lines by code, reference or name, whether they were asked about or not.
struct TwoLines {
  std::string shop;
  std::string a;
  std::string b;
};
SettledOrNot settle_lines(Book& book, const TwoLines& lines, bool same);

/// Takes the newest decision about a pair back, or, without a reference, the newest of all. What
/// held before it holds again.
SettledOrNot unsettle_link(Book& book, const std::string& shop, const std::string& reference);

}  // namespace rangebook
