// The data rows of a table in tests/checks: lines that start with `#` name its source and are left
// out, and so is the header line.
#pragma once

#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace rangebook {

inline std::vector<std::string> split_tabs(const std::string& line) {
  std::vector<std::string> cells(1);
  for (const char sign : line) {
    if (sign == '\t') {
      cells.emplace_back();
    } else {
      cells.back().push_back(sign);
    }
  }
  return cells;
}

/// Throws when the table is missing, so that a test cannot pass on nothing.
inline std::vector<std::vector<std::string>> check_rows(const std::string& name) {
  std::ifstream file(std::string(RANGEBOOK_CHECKS) + "/" + name);
  std::vector<std::vector<std::string>> rows;
  bool header = true;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    if (!header) rows.push_back(split_tabs(line));
    header = false;
  }
  if (rows.empty()) throw std::runtime_error("no rows in tests/checks/" + name);
  return rows;
}

}  // namespace rangebook
