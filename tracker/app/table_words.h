// The words of the command line that are about tables: the same for a capture, for reading one
// again, and for a profile.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "schema/table_options.h"

namespace CLI {
class App;
}

namespace rangebook {

struct TableWords {
  std::string delimiter;
  std::string quote;
  std::string encoding;
  std::string header_row;
  std::string decimal;
  std::string sheet;
  std::vector<std::string> columns;
};

void add_table_words(CLI::App& command, TableWords& words);

/// The options that the words stand for, or what is wrong with one of them.
std::variant<TableOptions, std::string> options_of(const TableWords& words);

/// `--delimiter semicolon --column "Preis=price"`: how options are said on the command line.
std::string said(const TableOptions& options);

}  // namespace rangebook
