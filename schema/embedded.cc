// Look-up and reading of the embedded reference tables.
#include "schema/embedded.h"

#include <string>
#include <utility>
#include <vector>

#include "schema/error.h"

namespace rangebook {
namespace {

std::string_view take_until(std::string_view& rest, char sign) {
  const auto at = rest.find(sign);
  const auto head = rest.substr(0, at);
  rest = at == std::string_view::npos ? std::string_view{} : rest.substr(at + 1);
  return head;
}

}  // namespace

std::optional<std::string_view> embedded_file(std::string_view name) {
  for (const auto& file : embedded_files()) {
    if (file.name == name) return file.text;
  }
  return std::nullopt;
}

std::vector<std::vector<std::string_view>> table_rows(std::string_view name) {
  const auto text = embedded_file(name);
  if (!text) throw Error("the reference table " + std::string(name) + " is not in this build");
  std::vector<std::vector<std::string_view>> rows;
  std::string_view rest = *text;
  bool header = true;
  while (!rest.empty()) {
    std::string_view line = take_until(rest, '\n');
    if (line.empty() || line.front() == '#') continue;
    if (std::exchange(header, false)) continue;
    auto& cells = rows.emplace_back();
    while (!line.empty()) cells.push_back(take_until(line, '\t'));
  }
  return rows;
}

}  // namespace rangebook
