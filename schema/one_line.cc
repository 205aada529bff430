// Two signs are escaped, all others stand for themselves.
#include "schema/one_line.h"

namespace rangebook {

std::string on_one_line(std::string_view text) {
  std::string out;
  for (const char sign : text) {
    if (sign == '\n') out += "\\n";
    if (sign == '\\') out += "\\\\";
    if (sign != '\n' && sign != '\\') out.push_back(sign);
  }
  return out;
}

std::string off_one_line(std::string_view line) {
  std::string out;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const bool escape = line[i] == '\\' && i + 1 < line.size();
    if (escape) ++i;
    out.push_back(escape && line[i] == 'n' ? '\n' : line[i]);
  }
  return out;
}

}  // namespace rangebook
