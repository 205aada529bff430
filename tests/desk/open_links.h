// A small book in which pairs of lines wait for a yes or no. Invented rows.
#pragma once

#include <string>

#include "tests/desk/open_desk.h"
#include "tracker/app/link_desk.h"

namespace rangebook {

/// Takes rows with every column into the book as a capture of the shop.
inline void keep_table(const TempFolder& folder, const Shop& shop, const std::string& season,
                       const std::string& day, const std::string& rows) {
  const std::string file = folder.file(season + ".csv");
  std::ofstream(file) << "line_code,name,category,colour,size,price,full_price,currency,in_stock,"
                         "composition,description\n"
                      << rows;
  Book book = Book::open(folder.file("b.rangebook"), true);
  book.put_shop(shop);
  CaptureRequest request;
  request.files = {file};
  request.shop = shop.slug;
  request.season = season;
  request.on = parse_day(day);
  ASSERT_TRUE(std::holds_alternative<CaptureReport>(run_capture(book, request, {})));
}

/// Two lines come back under new codes and names; the shop is asked about both.
inline void keep_renamed(const TempFolder& folder) {
  Shop shop = mill_shop();
  shop.link_above = 100;
  shop.ask_above = 1;
  keep_table(folder, shop, "AW24", "2024-09-02",
             "M101,Maya Wrap Dress,dresses,navy|ecru,8-16,79.00,,GBP,,100% viscose,Wrap dress with "
             "long sleeves and a tie belt\n"
             "M105,Ines Pleated Skirt,skirts,black|plum,8-14,55.00,,GBP,,100% polyester,Pleated "
             "skirt with an elastic waist\n"
             "M106,Ada Trousers,trousers,black,8-18,65.00,,GBP,,100% cotton,Straight trousers\n");
  keep_table(folder, shop, "AW25", "2025-09-01",
             "N201,Maya Midi Dress,dresses,navy|ecru,8-18,89.00,,GBP,,100% viscose,Wrap dress with "
             "long sleeves and a tie belt\n"
             "N205,Ines Skirt,skirts,black|plum,8-14,59.00,,GBP,,100% polyester,Pleated skirt with "
             "an elastic waist\n"
             "M106,Ada Trousers,trousers,black,8-18,65.00,,GBP,,100% cotton,Straight trousers\n");
}

inline LinkList links_of(const TempFolder& folder) {
  const Book book = Book::open(folder.file("b.rangebook"), false);
  const auto listed = list_links(book, {"mill", "", ""});
  return std::get<LinkList>(listed);
}

}  // namespace rangebook
