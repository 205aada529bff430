// Reading a whole page in a test: its rows as maps of the cells that are not empty, and its
// rejections.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "importers/page_reader.h"

namespace rangebook {

using Cells = std::map<std::string, std::string>;

struct ReadPage {
  std::vector<Cells> rows;
  std::vector<Origin> origins;
  std::vector<Rejection> rejections;
  std::string mapping;
};

inline ReadPage page_of(RowReader& reader) {
  ReadPage page;
  for (auto step = reader.next(); step != RowReader::Step::end; step = reader.next()) {
    if (step == RowReader::Step::rejection) {
      page.rejections.push_back(reader.rejection());
      continue;
    }
    Cells& cells = page.rows.emplace_back();
    for (std::size_t i = 0; i < kFieldCount; ++i) {
      const auto field = static_cast<Field>(i);
      if (!reader.row()[field].empty()) cells[std::string(to_string(field))] = reader.row()[field];
    }
    page.origins.push_back(reader.row().origin);
  }
  page.mapping = reader.mapping();
  return page;
}

inline ReadPage read_page(std::string_view html) { return page_of(*open_page(html, 7)); }

/// A page with one JSON-LD block.
inline std::string page_with(std::string_view json, std::string_view head = "") {
  return "<!doctype html><html><head><meta charset=utf-8>" + std::string(head) +
         "<script type=\"application/ld+json\">" + std::string(json) +
         "</script></head><body><p>invented</p></body></html>";
}

}  // namespace rangebook
