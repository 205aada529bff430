// Prints as JSON what our readers of microdata and RDFa find on pages: every statement, and the
// rows of the products. tests/oracles/run compares it with what the readers of others find.
//
//   page_statements PAGE...
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <variant>
#include <vector>

#include "importers/html_tree.h"
#include "importers/markup_source.h"
#include "importers/microdata.h"
#include "importers/rdfa.h"
#include "schema/raw_row.h"

namespace rangebook {
namespace {

using Json = nlohmann::json;

// One statement for each name: the property, and its text where the value is no item.
Json statements_of(const MarkupItems& items) {
  Json all = Json::array();
  for (const auto& item : items) {
    for (const auto& type : item.types) all.push_back({{"name", "type"}, {"text", type}});
    for (const auto& value : item.values) {
      for (const auto& name : value.names) {
        Json statement = {{"name", name}};
        if (!value.item) statement["text"] = value.text;
        all.push_back(std::move(statement));
      }
    }
  }
  return all;
}

Json rows_of(const MarkupItems& items) {
  MarkupSource source;
  source.add(items);
  source.find_products("");
  source.open_rows(PageFrame{});
  Json all = Json::array();
  for (const auto& row : source.rest()) {
    Json cells = Json::object();
    for (std::size_t i = 0; i < kFieldCount; ++i) {
      if (!row.cells[i].empty()) cells[to_string(static_cast<Field>(i))] = row.cells[i];
    }
    all.push_back(std::move(cells));
  }
  return all;
}

Json syntax_of(const MarkupItems& items) {
  return {{"statements", statements_of(items)}, {"rows", rows_of(items)}};
}

int print(int count, char** names) {
  Json pages = Json::object();
  for (int i = 1; i < count; ++i) {
    std::ifstream in(names[i]);
    std::stringstream text;
    text << in.rdbuf();
    const std::string html = text.str();
    const auto built = HtmlTree::build(html);
    const auto* tree = std::get_if<HtmlTree>(&built);
    if (!in || tree == nullptr) {
      std::cerr << "page_statements: cannot read " << names[i] << "\n";
      return 3;
    }
    pages[names[i]] = {{"microdata", syntax_of(read_microdata(*tree))},
                       {"rdfa", syntax_of(read_rdfa(*tree))}};
  }
  std::cout << pages.dump() << "\n";
  return 0;
}

}  // namespace
}  // namespace rangebook

int main(int count, char** names) { return rangebook::print(count, names); }
