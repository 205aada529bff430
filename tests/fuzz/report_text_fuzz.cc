// Names in reports: whatever bytes a shop writes, JSON stays valid, a page gets no markup from it,
// a terminal no control characters, and a spreadsheet no formula.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "reports/csv_writer.h"
#include "reports/html_writer.h"
#include "reports/json_writer.h"
#include "reports/phrase.h"
#include "tests/fuzz/require.h"

namespace rangebook {
namespace {

bool is_utf8(const std::string& text) {
  try {
    return !nlohmann::json(text).dump().empty();
  } catch (const nlohmann::json::exception&) {
    return false;
  }
}

void check_json(std::string_view text) {
  JsonWriter json;
  json.value(text);
  const std::string out = json.take();
  const auto replace = nlohmann::json::error_handler_t::replace;
  require(out == nlohmann::json(std::string(text)).dump(-1, ' ', false, replace),
          "two writers of JSON agree");
}

void check_html(std::string_view text) {
  HtmlWriter html;
  html.element("b", {{"title", text}, {"href", text}}, text);
  const std::string out = html.take();
  require(std::count(out.begin(), out.end(), '<') == 2, "text opens no element");
  require(std::count(out.begin(), out.end(), '"') >= 2, "the title is quoted");
  require(is_utf8(out), "a page is UTF-8");
  const std::string_view head = std::string_view(out).substr(0, out.find('>'));
  const auto quotes = std::count(head.begin(), head.end(), '"');
  require(quotes == (is_safe_url(text) ? 4 : 2), "a value does not leave its attribute");
}

void check_line(std::string_view text) {
  const std::string line = clean_line(text);
  require(is_utf8(line), "a line is UTF-8");
  require(std::none_of(line.begin(), line.end(),
                       [](char sign) { return static_cast<unsigned char>(sign) < 0x20; }),
          "a line has no control characters");
  require(clean_line(line) == line, "a clean line stays as it is");
}

void check_csv(std::string_view text) {
  CsvWriter csv;
  csv.text(text);
  const std::string cell = csv.take();
  constexpr std::string_view kFormula = "=+-@\t\r\n";
  const std::size_t start = !cell.empty() && cell[0] == '"' ? 1 : 0;
  require(cell.size() <= start || kFormula.find(cell[start]) == std::string_view::npos,
          "a cell is no formula");
}

}  // namespace
}  // namespace rangebook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace rangebook;
  const std::string_view text = as_text(data, size);
  check_json(text);
  check_html(text);
  check_line(text);
  check_csv(text);
  markdown_escaped(text);
  return 0;
}
